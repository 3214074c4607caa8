export interface Metafile { readonly outputs: Readonly<Record<string, { readonly inputs: Readonly<Record<string, { readonly bytesInOutput: number }>> }>> }
/** The licences of all that is bundled, as one text. Throws an Error where one cannot be told. */
export function thirdParty(root: string, metafile: Metafile): string;

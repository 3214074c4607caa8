/** The folder of the project. */
export const ROOT: string;
/** Makes dist/ anew. */
export function build(): Promise<void>;

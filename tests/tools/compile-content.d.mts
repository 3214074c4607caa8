/** The text of every YAML file under content/, by its path as shown. */
export function contentFiles(root: string): Map<string, string>;
/** Throws an Error that lists every mistake, one a line. */
export function compileContent(options: { root: string; outFile: string }): Promise<void>;

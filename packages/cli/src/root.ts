/** The folder of the clone: three steps up from sources and from what is built of them alike. */
export const ROOT = new URL('../../../', import.meta.url);

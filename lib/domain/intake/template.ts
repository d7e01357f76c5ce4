import { listColumns } from "./columns";

/** The header of a list with every column it may have; a reader opens it and writes one sensor a row. */
export const listTemplate = (): string => `\ufeff${listColumns.map(({ names }) => names[0]).join(",")}\r\n`;

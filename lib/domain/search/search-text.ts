import { readQuery, textField } from "../list/query";

/** What somebody looks for, as the address has it; a scanner's line ends, and what is too long, fall away. */
export const readSearchText = (given: Parameters<typeof readQuery>[1]): string =>
  readQuery({ q: textField }, given).q ?? "";

import type { DccSchemaFiles } from "./dcc-schema";
import { readDccSchemaFolder } from "./dcc-schema-folder";

const known = new Map<string, DccSchemaFiles>();

/** A folder that cannot be read holds no schema: the page then says that none was applied, and people can go on. */
const readable = (folder: string): DccSchemaFiles => {
  try {
    return readDccSchemaFolder(folder);
  } catch {
    return new Map();
  }
};

/** The schemas of a folder, read from disk once. Null: none was named, and only our own rules are applied. */
export const knownSchemaFolder = (folder: string | null): DccSchemaFiles | undefined => {
  if (folder === null) return undefined;
  const files = known.get(folder) ?? readable(folder);
  // What could not be read is tried again: the folder may be mounted later.
  if (files.size > 0) known.set(folder, files);
  return files;
};

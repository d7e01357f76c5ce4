import type { DccSchemaFiles } from "./dcc-schema";
import { readDccSchemaFolder } from "./dcc-schema-folder";

const known = new Map<string, DccSchemaFiles>();

/** The schemas of a folder, read from disk once. Null: none was named, and only our own rules are applied. */
export const knownSchemaFolder = (folder: string | null): DccSchemaFiles | undefined => {
  if (folder === null) return undefined;
  const files = known.get(folder) ?? readDccSchemaFolder(folder);
  known.set(folder, files);
  return files;
};

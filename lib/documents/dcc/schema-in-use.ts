import type { DccSchemaFiles } from "@/lib/files/dcc/dcc-schema";
import { knownSchemaFolder } from "@/lib/files/dcc/known-schema-folder";

let folder: string | null = null;

/** The folder with the published schemas, told once at start by the process that issues; null: our own rules alone. */
export const configureDccSchema = (given: string | null): void => {
  folder = given;
};

/** What a certificate is held against before it goes out; undefined where no schema is at hand. */
export const dccSchemaInUse = (): DccSchemaFiles | undefined => knownSchemaFolder(folder);

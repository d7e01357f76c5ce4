import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { DccSchemaFiles } from "./dcc-schema";

/** All schemas below a folder laid out as published: dcc/v3.3.0/dcc.xsd, si/v2.2.1/SI_Format.xsd, dsig/…. */
export const readDccSchemaFolder = (folder: string): DccSchemaFiles =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith(".xsd"))
      .map((entry) => path.join(entry.parentPath, entry.name))
      .sort()
      .map((file) => [
        path.relative(folder, file).split(path.sep).join("/"),
        new Uint8Array(readFileSync(file)),
      ]),
  );

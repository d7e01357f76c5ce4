import { z } from "zod";
import { Evidence } from "./schema";

/** JSON Schema (2020-12) of the evidence file as a writer makes it, generated from the zod schema. */
export function evidenceJsonSchema(): Record<string, unknown> {
  return {
    title: "Emfolio evidence file, version 2",
    ...z.toJSONSchema(Evidence, { target: "draft-2020-12", io: "input", unrepresentable: "any" }),
  };
}

import { inject } from "vitest";
import { cloneTemplate, type TestDatabase } from "./clone-template";
import type { Template } from "./template";

declare module "vitest" {
  interface ProvidedContext {
    template: Template;
  }
}

export type { TestDatabase };

/** A fresh, migrated database of one's own, in some 60 ms. Evidence cannot be emptied, so each test file has one. */
export async function testDatabase(): Promise<TestDatabase> {
  return cloneTemplate(inject("template"));
}

import { afterAll } from "vitest";

/** What a process is told once at its start; test files that share one must not find what another was told. */
const told = ["emfolioUrl", "emfolioPublicUrl", "emfolioDocumentUrl", "emfolioSealKey"] as const;

// Registered before the file's own, so it runs after them.
afterAll(() => {
  for (const name of told) Reflect.deleteProperty(globalThis, name);
});

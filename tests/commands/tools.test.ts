import { afterEach, expect, it } from "vitest";
import { ensureTools } from "@/lib/commands/test/tools";
import { temporaryFolder } from "../support/temporary-folder";

const nothing = temporaryFolder();
const { PATH } = process.env;
afterEach(() => {
  process.env.PATH = PATH;
});

it("names what is missing and cannot be installed, so that a test left out is no surprise", () => {
  const told: string[] = [];
  process.env.PATH = nothing;
  ensureTools((line) => told.push(line));
  expect(told).toEqual([
    "Without poppler-utils and openssl: tests that need them are left out (apt-get install poppler-utils openssl)",
  ]);
});

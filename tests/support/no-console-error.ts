import { afterEach, beforeEach, expect } from "vitest";

// React and others report real faults only here; a test that passes over one has not passed.
let told: unknown[][] = [];

console.error = (...parts: unknown[]) => {
  told.push(parts);
};

beforeEach(() => {
  told = [];
});

afterEach(() => {
  expect(told, "console.error was called").toEqual([]);
});

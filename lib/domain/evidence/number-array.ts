import { z } from "zod";

/**
 * An array of finite numbers, checked in one plain pass and handed on as it is: a run has a million readings, and a
 * schema that copies each of them costs more than all the rest of an evaluation. The first wrong one is named.
 */
export function numberArray() {
  return z
    .custom<number[]>(Array.isArray, "Invalid input: expected array")
    .superRefine((values, context) => {
      if (!Array.isArray(values)) return;
      const wrong = firstThatIsNoNumber(values);
      if (wrong < 0) return;
      const value: unknown = values[wrong];
      const received = typeof value === "number" ? String(value) : typeof value;
      context.addIssue({
        code: "custom",
        path: [wrong],
        message: `Invalid input: expected number, received ${received}`,
      });
    })
    .meta({ type: "array", items: { type: "number" } });
}

/** An array of +1 and −1, checked likewise. */
export function signArray() {
  return z
    .custom<(1 | -1)[]>(Array.isArray, "Invalid input: expected array")
    .superRefine((values, context) => {
      if (!Array.isArray(values)) return;
      const wrong = firstThatIsNoSign(values);
      if (wrong < 0) return;
      context.addIssue({ code: "custom", path: [wrong], message: "Invalid input: expected 1 or -1" });
    })
    .meta({ type: "array", items: { type: "number", enum: [1, -1] } });
}

function firstThatIsNoNumber(values: readonly unknown[]): number {
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i];
    // NaN and the infinities are the numbers that are not 0 less themselves.
    if (typeof value !== "number" || value - value !== 0) return i;
  }
  return -1;
}

function firstThatIsNoSign(values: readonly unknown[]): number {
  for (let i = 0; i < values.length; i += 1) if (values[i] !== 1 && values[i] !== -1) return i;
  return -1;
}

import { expect, it } from "vitest";
import { mixedInk } from "@/lib/documents/drawing/mixed-ink";

it.each([
  ["#000000", 0, "#ffffff"],
  ["#000000", 1, "#000000"],
  ["#1f5c8b", 0.14, "#e0e8ef"],
  ["#AD3F0C", 0.5, "#d69f86"],
])("%s at %d on white paper is %s", (ink, share, mixed) => expect(mixedInk(ink, share)).toBe(mixed));

it("knows inks by their six digits alone", () => expect(() => mixedInk("heat", 0.5)).toThrow("no ink"));

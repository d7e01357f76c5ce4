import { expect, it } from "vitest";
import { waitWords } from "@/app/(lab)/runs/wait-words";
import { awaitStability, type StabilityWait } from "@/lib/domain/evidence/await-stability";

const criterion = { minimumSeconds: 600, slopeTimesLengthCelsius: 0.1, agreementCelsius: 0.4 };

/** Invented: two references, `apart` °C from each other. */
const waitOf = (apart: number, celsius: (t: number) => number): StabilityWait => {
  const seconds = Array.from({ length: 141 }, (_, i) => 10 * i);
  const references = [0, apart].map((offset, k) => ({
    id: `R${k + 1}`,
    seconds,
    celsius: seconds.map((t) => celsius(t) + offset),
  }));
  const wait = awaitStability(references, 600, criterion);
  if (!wait) throw new Error("nothing to wait for");
  return wait;
};

it("promises the drift alone while the references differ", () => {
  const settling = (t: number): number => 600 - 4 * Math.exp(-t / 700);
  expect(waitWords(waitOf(0.1, settling)).interval).not.toContain("drift alone");
  expect(waitWords(waitOf(0.9, settling)).interval).toContain("This is the drift alone");
});

it("does not tell a person to wait for what waiting does not bring", () => {
  const words = waitWords(waitOf(0.9, () => 600));
  expect(words.headline).toBe("At rest, but not accepted");
  expect(words.interval).toContain("see to the references");
});

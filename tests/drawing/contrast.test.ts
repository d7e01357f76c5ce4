import { describe, expect, it } from "vitest";
import { printInks } from "@/lib/drawing/print-inks";
import { contrast, type Theme, tokens } from "./tokens";

const themes: readonly Theme[] = ["light", "dark"];
const grounds = ["--ground", "--surface", "--sunken"];

/** WCAG 2.2, 1.4.3: text 4.5. */
const text: readonly (readonly [string, readonly string[]])[] = [
  ["--ink", [...grounds, "--heat-wash", "--good-wash", "--watch-wash", "--bad-wash"]],
  ["--ink-2", grounds],
  ["--link", [...grounds, "--watch-wash", "--bad-wash", "--good-wash"]],
  ["--heat", ["--ground", "--surface"]],
  ["--on-heat", ["--heat"]],
  ["--good", ["--ground", "--surface", "--good-wash"]],
  ["--watch", ["--ground", "--surface", "--watch-wash"]],
  ["--bad", ["--ground", "--surface", "--bad-wash"]],
];

/** WCAG 2.2, 1.4.11: what must be seen to understand or use, 3. */
const graphics: readonly (readonly [string, readonly string[]])[] = [
  ["--rule-strong", grounds],
  ["--heat", ["--ground", "--surface", "--heat-wash"]],
  ...[1, 2, 3, 4, 5, 6].map((n) => [`--line-${n}`, ["--ground", "--surface", "--heat-wash"]] as const),
];

describe.each(themes)("colours, %s", (theme) => {
  const found = tokens(theme);
  const ratio = (front: string, back: string) => {
    const [a, b] = [found.get(front), found.get(back)];
    if (!a || !b) throw new Error(`${front} or ${back} is not a token of app/globals.css`);
    return contrast(a, b);
  };

  it.each(text.flatMap(([front, backs]) => backs.map((back) => [front, back] as const)))(
    "text %s on %s has at least 4.5",
    (front, back) => expect(ratio(front, back)).toBeGreaterThanOrEqual(4.5),
  );

  it.each(graphics.flatMap(([front, backs]) => backs.map((back) => [front, back] as const)))(
    "shape %s on %s has at least 3",
    (front, back) => expect(ratio(front, back)).toBeGreaterThanOrEqual(3),
  );
});

describe("the measure itself", () => {
  it("gives 21 for black on white and 1 for a colour on itself", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
    expect(contrast("#ad3f0c", "#ad3f0c")).toBe(1);
  });
});

describe("inks of the PDF", () => {
  const light = tokens("light");
  const onWhite = new Set(["ground", "surface"]);
  const nameOf = (ink: string) => {
    const special: Readonly<Record<string, string>> = {
      muted: "--ink-2",
      faint: "--rule",
      edge: "--rule-strong",
      "type-k": "--iec-k",
      "type-n": "--iec-n",
      "type-r": "--iec-s",
      "type-s": "--iec-s",
    };
    return special[ink] ?? `--${ink}`;
  };

  it.each(Object.entries(printInks).filter(([ink]) => !onWhite.has(ink)))(
    "%s is the light colour of the page",
    (ink, colour) => expect(colour).toBe(light.get(nameOf(ink))),
  );

  it.each(["ink", "muted", "heat", "good", "watch", "bad"] as const)("%s can be read on white paper", (ink) =>
    expect(contrast(printInks[ink], "#ffffff")).toBeGreaterThanOrEqual(4.5),
  );
});

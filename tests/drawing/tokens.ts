import { readFileSync } from "node:fs";
import path from "node:path";

export type Theme = "light" | "dark";

const css = readFileSync(path.resolve(import.meta.dirname, "../../app/globals.css"), "utf8");

/** The colours of app/globals.css as the browser takes them: each custom property in each theme. */
export function tokens(theme: Theme): ReadonlyMap<string, string> {
  const root = css.slice(css.indexOf(":root {"), css.indexOf('[data-theme="light"]'));
  const found = new Map<string, string>();
  for (const [, name = "", light = "", dark = ""] of root.matchAll(
    /(--[\w-]+):\s*light-dark\((#[0-9a-f]{6}),\s*(#[0-9a-f]{6})\)/g,
  ))
    found.set(name, theme === "light" ? light : dark);
  for (const [, name = "", value = ""] of root.matchAll(/(--[\w-]+):\s*(#[0-9a-f]{6});/g))
    found.set(name, value);
  return found;
}

/** Relative luminance, WCAG 2.2, from sRGB. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio, WCAG 2.2: (L1 + 0.05) / (L2 + 0.05). */
export function contrast(a: string, b: string): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

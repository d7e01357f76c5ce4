import type { Ink } from "@/lib/drawing/scene";

/** The inks on white paper: the light colours of app/globals.css. A test holds the two together. */
export const printInks: Readonly<Record<Ink, string>> = {
  ink: "#171b1c",
  muted: "#50595a",
  faint: "#d0d6d5",
  edge: "#757f7f",
  ground: "#ffffff",
  surface: "#ffffff",
  sunken: "#e7ebea",
  heat: "#ad3f0c",
  "heat-wash": "#fbe9de",
  good: "#17623e",
  watch: "#6b4c00",
  bad: "#a01640",
  "line-1": "#1f5c8b",
  "line-2": "#6d4a94",
  "line-3": "#0f6b62",
  "line-4": "#7d5a14",
  "line-5": "#8a3563",
  "line-6": "#4c5a66",
  "type-k": "#2d8f57",
  "type-n": "#e07aa8",
  "type-r": "#e8812f",
  "type-s": "#e8812f",
};

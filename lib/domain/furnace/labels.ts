import type { ConfigurationKind } from "./types";

export const configurationKindLabels: Readonly<Record<ConfigurationKind, string>> = {
  "bare-tube": "Bare tube",
  "equalising-block": "Equalising block",
};

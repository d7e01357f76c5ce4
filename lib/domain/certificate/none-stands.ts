import { hasEnded, type Standing } from "./standing";

/** It was certified, and none of its certificates stands: the last of them was withdrawn. */
export const noneStands = (certificates: readonly { readonly standing: Standing }[]): boolean =>
  certificates.length > 0 && certificates.every(({ standing }) => hasEnded(standing));

/** A picture as it is kept: the same picture, without what tells where, when and with what it was taken. */
export type ReadPhoto = {
  readonly mediaType: "image/jpeg" | "image/png" | "image/webp";
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
};

/** A photo of a telephone made smaller; more is refused. */
export const photoLimitBytes = 4_000_000;

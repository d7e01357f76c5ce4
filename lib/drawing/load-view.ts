import type { Ink } from "@/lib/drawing/scene";

export type LoadPlaceView = {
  /** Bore or place in the bundle. */
  readonly place: string;
  readonly kind: "sensor" | "reference" | "shorted";
  /** Serial number or what a person calls it. */
  readonly label: string;
  readonly type?: string;
  readonly channel: string;
  /** Tag of the reference junction. */
  readonly junction?: string;
  readonly immersionMillimetre?: number;
  /** Outside diameter of the sheath, where it is known. */
  readonly diameterMillimetre?: number;
  /** Where its row stands: the drawing then leads there. */
  readonly href?: string;
};

/** A bore of an equalising block, its centre measured from the block's own. */
export type BoreView = {
  readonly number: string;
  readonly diameterMillimetre: number;
  readonly xMillimetre: number;
  readonly yMillimetre: number;
};

export type LoadView = {
  readonly title: string;
  readonly configuration: "bare-tube" | "equalising-block";
  readonly places: readonly LoadPlaceView[];
  /** Of the furnace tube; known, the cross-section is to scale. */
  readonly boreMillimetre?: number;
  readonly lengthMillimetre?: number;
  /** Depth of the best uniformity. */
  readonly bestImmersionMillimetre?: number;
  readonly bores?: readonly BoreView[];
};

export const typeInk = (type: string | undefined): Ink => {
  switch (type) {
    case "K":
      return "type-k";
    case "N":
      return "type-n";
    case "R":
      return "type-r";
    case "S":
      return "type-s";
    default:
      return "muted";
  }
};

export const kindWord = (kind: LoadPlaceView["kind"]): string =>
  kind === "reference" ? "reference standard" : kind === "shorted" ? "shorted channel" : "sensor";

/** What goes into the furnace: a shorted channel takes a channel, not a place in the tube. */
export const inTube = (view: LoadView): readonly LoadPlaceView[] =>
  view.places.filter((place) => place.kind !== "shorted");

export const loadTable = (view: LoadView) => ({
  caption: view.title,
  columns: [
    { header: "Place" },
    { header: "What" },
    { header: "Type" },
    { header: "Channel" },
    { header: "Junction" },
    { header: "Immersion", unit: "mm", align: "number" as const },
  ],
  rows: view.places.map((place) => [
    place.place,
    `${kindWord(place.kind)} ${place.label}`.trim(),
    place.type ?? "",
    place.channel,
    place.junction ?? "",
    place.immersionMillimetre === undefined ? "not given" : String(place.immersionMillimetre),
  ]),
});

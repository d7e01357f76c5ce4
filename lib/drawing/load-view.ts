import type { Ink } from "@/lib/drawing/scene";

export type LoadPlaceView = {
  /** Bore or place in the bundle. */
  readonly place: string;
  readonly kind: "sensor" | "reference" | "shorted";
  /** Serial number or what a person calls it. */
  readonly label: string;
  readonly type?: string;
  readonly channel: string;
  readonly immersionMillimetre?: number;
};

export type LoadView = {
  readonly title: string;
  readonly configuration: "bare-tube" | "equalising-block";
  readonly places: readonly LoadPlaceView[];
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
    { header: "Immersion", unit: "mm", align: "number" as const },
  ],
  rows: view.places.map((place) => [
    place.place,
    `${kindWord(place.kind)} ${place.label}`.trim(),
    place.type ?? "",
    place.channel,
    place.immersionMillimetre === undefined ? "not given" : String(place.immersionMillimetre),
  ]),
});

"use client";
import type { BoreView, LoadPlaceView } from "@/lib/drawing/load-view";
import type { PlaceRow } from "./place-rows";

const fieldOf = (form: HTMLFormElement, index: number, name: string) =>
  form.elements.namedItem(`places.${index}.${name}`) as HTMLInputElement | HTMLSelectElement | null;

const chosenText = (field: HTMLInputElement | HTMLSelectElement | null): string | undefined =>
  field instanceof HTMLSelectElement
    ? field.selectedOptions[0]?.label.replace(/ \(.*\)$/, "")
    : field?.value || undefined;

/** A number as somebody is typing it; half typed is not given. */
const figureOf = (field: HTMLInputElement | HTMLSelectElement | null): number | undefined => {
  const value = Number.parseFloat((field?.value ?? "").replace(",", "."));
  return Number.isFinite(value) && value > 0 ? value : undefined;
};

/** What the fields of the load say now. */
export const readPlaces = (form: HTMLFormElement, rows: readonly PlaceRow[]): readonly LoadPlaceView[] =>
  rows.map(({ kind, tag, type }, index) => ({
    kind,
    label: tag || "shorted",
    type: type ?? undefined,
    place: fieldOf(form, index, "place")?.value ?? "",
    channel: fieldOf(form, index, "channel")?.value ?? "",
    junction: chosenText(fieldOf(form, index, "junctionId")),
    immersionMillimetre: figureOf(fieldOf(form, index, "immersionMillimetre")),
    href: `#place-${index}`,
  }));

/** Written as a person would: the form's own listeners hear it. */
const write = (field: HTMLInputElement | HTMLSelectElement | null, value: string): void => {
  if (!field) return;
  field.value = value;
  field.dispatchEvent(new Event("input", { bubbles: true }));
};

/** Changes places with the next or the one before, of those that stand in the tube. Says what it did. */
export const swapWith = (
  form: HTMLFormElement,
  rows: readonly PlaceRow[],
  index: number,
  step: number,
): string => {
  const standing = rows.flatMap(({ kind }, row) => (kind === "shorted" ? [] : [row]));
  const at = standing.indexOf(index);
  const other = standing[(at + step + standing.length) % standing.length];
  if (at < 0 || other === undefined || other === index) return "";
  const mine = fieldOf(form, index, "place");
  const theirs = fieldOf(form, other, "place");
  const [from, to] = [mine?.value ?? "", theirs?.value ?? ""];
  write(mine, to);
  write(theirs, from);
  return `${rows[index]?.tag} now stands in place ${to}, ${rows[other]?.tag} in place ${from}.`;
};

/** References into the bores nearest the middle, then the sensors outwards. Says what it did. */
export const boreOrder = (
  form: HTMLFormElement,
  rows: readonly PlaceRow[],
  bores: readonly BoreView[],
): string => {
  const inward = bores.toSorted(
    (a, b) => Math.hypot(a.xMillimetre, a.yMillimetre) - Math.hypot(b.xMillimetre, b.yMillimetre),
  );
  const standing = rows.flatMap((row, index) => (row.kind === "shorted" ? [] : [{ ...row, index }]));
  const ordered = [
    ...standing.filter(({ kind }) => kind === "reference"),
    ...standing.filter(({ kind }) => kind === "sensor"),
  ];
  for (const [nth, { index }] of ordered.entries()) {
    const bore = inward[nth];
    if (bore) write(fieldOf(form, index, "place"), bore.number);
  }
  return ordered.length > bores.length
    ? `${bores.length} stand in bores; ${ordered.length - bores.length} are left without one.`
    : `${ordered.length} stand in bores, references in the middle.`;
};

export type NamedPlace = { readonly tag: string | null; readonly place: string; readonly channel: string };

const byPlace = new Set(["tips-warmed"]);
const byChannel = new Set(["channel-zero", "channel-in-another-run"]);

/** What a rule of the gate calls whatever is mounted there: by its place, its channel or its tag. */
export const nameOf = (code: string, place: NamedPlace): string | null => {
  if (byPlace.has(code)) return place.place;
  return byChannel.has(code) ? place.channel : place.tag;
};

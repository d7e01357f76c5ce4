import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { type TipCheckState, tipCheckStateLabels } from "@/lib/domain/run/tip-check";
import type { RunLoadView } from "@/lib/views/run/run-load";

const columns = [
  { key: "place", header: "Place" },
  { key: "item", header: "What stands there" },
  { key: "channel", header: "Channel" },
  { key: "immersion", header: "Immersion", unit: "mm", align: "number" as const },
  { key: "junction", header: "Reference junction" },
  { key: "rise", header: "Tip warmed", unit: "µV", align: "number" as const },
  { key: "tip", header: "Tip check" },
];

const tipMarks = {
  passed: { state: "verified", tone: "good" },
  "too-small": { state: "broken", tone: "bad" },
  "other-channels-moved": { state: "broken", tone: "bad" },
  missing: { state: "open", tone: "plain" },
} as const satisfies Record<TipCheckState, { state: string; tone: string }>;

function Item({ place }: { readonly place: RunLoadView["places"][number] }) {
  if (place.kind === "shorted") return <>Shorted channel</>;
  const name =
    place.kind === "sensor" ? (
      <>
        <Link href={`/sensors/${place.tag}`}>{place.tag}</Link>
        {place.set === "after-anneal" ? <span className="quiet"> after annealing</span> : null}
      </>
    ) : (
      place.tag
    );
  return (
    <>
      {name} {place.type ? <TypeLetter letter={place.type} /> : null}{" "}
      <span className="quiet">
        {place.serial}
        {place.customer ? `, ${place.customer}` : ", reference"}
      </span>
    </>
  );
}

export function LoadTable({ view }: { readonly view: RunLoadView }) {
  return (
    <DataTable
      caption="Places of the furnace load, with channel, junction and tip check"
      captionUnseen
      columns={columns}
      rows={view.places.map((place) => ({
        key: place.place,
        tone: place.tipState === "too-small" || place.tipState === "other-channels-moved" ? "bad" : undefined,
        cells: {
          place: place.place,
          item: <Item place={place} />,
          channel: place.channel,
          immersion: place.immersionMillimetre ?? <span className="quiet">not stated</span>,
          junction: `${place.junction} at ${place.junctionCelsius} °C`,
          rise: place.tip?.riseMicrovolt ?? "",
          tip:
            place.kind === "shorted" ? (
              ""
            ) : (
              <StateMark {...tipMarks[place.tipState]} label={tipCheckStateLabels[place.tipState]} />
            ),
        },
      }))}
    />
  );
}

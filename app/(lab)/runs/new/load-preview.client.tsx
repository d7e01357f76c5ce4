"use client";
import { type KeyboardEvent, type MouseEvent, useEffect, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { FurnaceLoad } from "@/app/_ui/drawing/furnace-load";
import type { LoadPlaceView, LoadView } from "@/lib/drawing/load-view";
import { boreOrder, readPlaces, swapWith } from "./load-fields.client";
import type { PlaceRow } from "./place-rows";

export type PreviewConfiguration = Pick<
  LoadView,
  "configuration" | "boreMillimetre" | "lengthMillimetre" | "bestImmersionMillimetre" | "bores"
> & { readonly id: string };

type Props = {
  readonly rows: readonly PlaceRow[];
  readonly configurations: readonly PreviewConfiguration[];
};

const isPlaceLink = (target: EventTarget): target is SVGAElement =>
  target instanceof Element && target.closest("a[href^='#place-']") !== null;

const rowOf = (target: EventTarget): number =>
  Number((target as Element).closest("a")?.getAttribute("href")?.replace("#place-", ""));

/**
 * The load as it will stand, drawn while it is typed. Each thing in the picture leads to its row; the arrow keys change
 * places with the neighbour, so that nothing needs dragging. Without JavaScript the table of fields is the whole form.
 */
export function LoadPreview({ rows, configurations }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const [places, setPlaces] = useState<readonly LoadPlaceView[]>(() =>
    rows.map(({ kind, tag, type, place, channel }, index) => ({
      kind,
      label: tag || "shorted",
      type: type ?? undefined,
      place,
      channel,
      href: `#place-${index}`,
    })),
  );
  const [chosen, setChosen] = useState(configurations[0]?.id);
  const [said, setSaid] = useState("");
  const configuration = configurations.find(({ id }) => id === chosen) ?? configurations[0];

  useEffect(() => {
    const form = frame.current?.closest("form");
    if (!form) return;
    const read = () => {
      setPlaces(readPlaces(form, rows));
      setChosen(String(new FormData(form).get("configurationId") ?? ""));
    };
    read();
    form.addEventListener("input", read);
    form.addEventListener("change", read);
    return () => {
      form.removeEventListener("input", read);
      form.removeEventListener("change", read);
    };
  }, [rows]);

  const jump = (event: MouseEvent) => {
    if (!isPlaceLink(event.target)) return;
    event.preventDefault();
    frame.current
      ?.closest("form")
      ?.querySelector<HTMLInputElement>(`[name="places.${rowOf(event.target)}.place"]`)
      ?.focus();
  };
  const move = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const form = frame.current?.closest("form");
    if (step === undefined || !form || !isPlaceLink(event.target)) return;
    event.preventDefault();
    setSaid(swapWith(form, rows, rowOf(event.target), step));
  };
  const fill = () => {
    const form = frame.current?.closest("form");
    if (form && configuration?.bores) setSaid(boreOrder(form, rows, configuration.bores));
  };

  if (!configuration) return null;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the links inside are what acts; the frame only listens
    <div ref={frame} onClick={jump} onKeyDown={move}>
      <FurnaceLoad view={{ title: "The load as typed", ...configuration, places }} table="none" />
      <p className="quiet">
        Each thing leads to its row below; the arrow keys change places with its neighbour. The rows are the
        same load as a table.
      </p>
      {configuration.bores?.length ? (
        <Button type="button" kind="quiet" onClick={fill}>
          Number by the bores
        </Button>
      ) : null}
      <p className="unseen" role="status">
        {said}
      </p>
    </div>
  );
}

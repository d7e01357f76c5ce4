import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "@/lib/views/view";
import { loadHead, runHead } from "./run-head";

/** One channel as it was read, with the accepted windows over it; the others by name, to go to. */
export const runChannelsView = (actor: Actor, number: string, channel: string | undefined) =>
  answer(actor, "laboratory.read", async (tx) => {
    const places = await tx.loadPlace.findMany({ where: { run: { number } }, select: { channel: true } });
    const known = places.some((place) => place.channel === channel);
    const loaded = await loadHead(
      tx,
      number,
      known && channel ? [channel] : places.map((place) => place.channel),
    );
    const { evidence } = loaded;
    const nominal = new Map(evidence.setpoints.map(({ id, nominalCelsius }) => [id, nominalCelsius]));
    return {
      head: await runHead(tx, actor, loaded),
      chosen: known ? channel : undefined,
      channels: evidence.load.map(({ channel: name, item, place }) => {
        const readings = evidence.scans.channels.find((one) => one.channel === name);
        const type =
          item.kind === "sensor"
            ? evidence.sensors.find(({ id }) => id === item.id)?.type
            : item.kind === "reference"
              ? evidence.references.find(({ id }) => id === item.id)?.type
              : undefined;
        return {
          channel: name,
          place,
          label: item.kind === "shorted" ? "Shorted channel" : item.id,
          type: type ?? null,
          seconds: readings?.seconds ?? [],
          microvolts: readings?.microvolts ?? [],
          reversed: readings?.polarity.filter((sign) => sign < 0).length ?? 0,
        };
      }),
      windows: evidence.windows.map((window) => ({
        label: `${Number((nominal.get(window.setpoint) ?? 0).toFixed(2))} °C`,
        fromSeconds: window.fromSeconds,
        toSeconds: window.toSeconds,
      })),
    };
  });

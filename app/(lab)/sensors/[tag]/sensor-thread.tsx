import { Thread } from "@/app/_ui/thread";
import { Timestamp } from "@/app/_ui/timestamp";
import type { SensorPage } from "@/lib/views/sensor/sensor";

type Key = SensorPage["thread"][number]["key"];

/** The page of that moment. */
const hrefOf = (sensor: SensorPage, key: Key): string | undefined => {
  const run = sensor.runs[0]?.number;
  const certificate = sensor.certificates[0]?.number;
  if (key === "ordered") return `/orders/${sensor.order.number}`;
  if (key === "received") return `/sensors/${sensor.tag}#intake`;
  if (key === "loaded") return run && `/runs/${run}/load`;
  if (key === "measured") return run && `/runs/${run}/readings`;
  if (key === "evaluated") return run && `/runs/${run}/results`;
  if (key === "in-review") return run && sensor.maySeeReview ? `/review/${run}` : undefined;
  if (key === "issued") return certificate && `/certificates/${certificate}`;
  return `/sensors/${sensor.tag}#history`;
};

export function SensorThread({ sensor }: { readonly sensor: SensorPage }) {
  const { last } = sensor;
  return (
    <Thread
      label={`Thread of sensor ${sensor.tag}`}
      beads={sensor.thread.map(({ key, label, state }) => ({
        label,
        state,
        href: state === "next" ? undefined : hrefOf(sensor, key),
      }))}
      last={
        last ? (
          <>
            {last.who} {last.sentence}, <Timestamp at={last.at} />
          </>
        ) : undefined
      }
      next={`Next: ${sensor.next}`}
    />
  );
}

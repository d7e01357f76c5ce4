import { DriftChart } from "@/app/_ui/drawing/drift-chart";
import { Tabs } from "@/app/_ui/tabs";
import type { DriftSeries } from "@/lib/domain/equipment/drift-history";

type Props = {
  readonly tag: string;
  readonly drift: readonly DriftSeries[];
  /** The temperature of the address. */
  readonly asked: string | readonly string[] | undefined;
  readonly here: string;
  readonly allowedCelsius: number;
};

/** One temperature at a time, the highest first: there a reference changes most. By date, and by hours where they differ. */
export function DriftSection({ tag, drift, asked, here, allowedCelsius }: Props) {
  const chosen = drift.find(({ celsius }) => String(celsius) === asked) ?? drift.at(-1);
  if (!chosen)
    return <p className="quiet">It takes two accepted certificates with a temperature in common.</p>;
  const address = (celsius: number) => `${here}?celsius=${celsius}`;
  const { celsius, points } = chosen;
  const hours = new Set(points.map((point) => point.hours));
  const title = `${tag} at ${celsius} °C`;
  return (
    <>
      <Tabs
        label="Temperature"
        current={address(celsius)}
        tabs={drift.map((one) => ({ label: `${one.celsius} °C`, href: address(one.celsius) }))}
      />
      <DriftChart
        view={{ title: `${title}, by date`, against: "date", points, allowedCelsius }}
        caption={`${title}, by date, with U; dashed: ± ${allowedCelsius} °C about the last.`}
      />
      {hours.size > 1 ? (
        <DriftChart
          view={{ title: `${title}, by hours above 1000 °C`, against: "hours", points, allowedCelsius }}
          caption={`${title}, by hours above 1000 °C.`}
        />
      ) : (
        <p className="quiet">
          No hours above 1000 °C were counted between its calibrations, so nothing can be drawn against them.
        </p>
      )}
    </>
  );
}

import type { RunWindowsView } from "@/lib/views/run/run-windows";
import { celsiusText } from "../run-marks";
import css from "../runs.module.css";

const duration = (seconds: number): string => {
  const minutes = Math.floor(seconds / 60);
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`;
};

type FigureProps = { readonly value: string; readonly unit?: string; readonly label: string };

function Figure({ value, unit, label }: FigureProps) {
  return (
    <div>
      <span className={css.figure}>
        {value}
        {unit ? <span className={css.unit}> {unit}</span> : null}
      </span>
      <span className={css.label}>{label}</span>
    </div>
  );
}

/** What matters while the furnace is hot: where it should be, where it is, since when, how many setpoints are left. */
export function FarFigures({ view }: { readonly view: RunWindowsView }) {
  const { current, now, head } = view;
  if (!now) return null;
  // Once it is handed over, the furnace has long gone on to other work.
  const isHot = head.state === "measuring";
  const decided = head.setpoints.filter(({ isOpen }) => !isOpen).length;
  return (
    <div className={css.far}>
      {current ? (
        <Figure
          value={celsiusText(current.celsius)}
          unit="°C"
          label={isHot ? "Current setpoint" : "Last setpoint"}
        />
      ) : null}
      <Figure value={now.celsius.toFixed(1)} unit="°C" label="References at their last reading" />
      <Figure value={duration(now.seconds)} label="First to last reading" />
      <Figure value={`${decided} of ${head.setpoints.length}`} label="Setpoints decided" />
    </div>
  );
}

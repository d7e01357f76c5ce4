type Props = {
  readonly label: string;
  readonly value: number;
  readonly max: number;
  /** What the numbers count: "setpoints". */
  readonly unit?: string;
  readonly tone?: "plain" | "heat";
};

/** Progress as a number first, a bar second. */
export function Meter({ label, value, max, unit, tone = "plain" }: Props) {
  const share = max > 0 ? Math.max(0, Math.min(1, value / max)) : 0;
  return (
    <div className="meter">
      <div className="meter-head">
        <span>{label}</span>
        <span className="number">
          {value} of {max}
          {unit ? ` ${unit}` : ""}
        </span>
      </div>
      <div
        className="meter-track"
        role="progressbar"
        aria-label={label}
        aria-valuenow={value}
        aria-valuemin={0}
        aria-valuemax={max}
      >
        <div className="meter-fill" data-tone={tone} style={{ width: `${share * 100}%` }} />
      </div>
    </div>
  );
}

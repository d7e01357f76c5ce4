import { type PastedSerial, serialKey } from "@/lib/domain/sensor/serials";
import type { SensorHere } from "@/lib/domain/sensor/still-here";

type Props = { readonly serials: readonly PastedSerial[]; readonly known: readonly SensorHere[] };

/** While the serials are written: those that are in the house already, under which label. It stops nothing. */
export function SerialsHere({ serials, known }: Props) {
  const keys = new Set(serials.map(({ serial }) => serialKey(serial)));
  const found = known.filter(({ serial }) => keys.has(serialKey(serial)));
  return (
    <div role="status">
      {found.length > 0 ? (
        <ul className="list">
          {found.map(({ serial, tag, typeLetter }) => (
            <li key={tag}>
              {tag} (type {typeLetter}) with the serial {serial} is still here. See whether this is another
              sensor.
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

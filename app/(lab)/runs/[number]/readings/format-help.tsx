import { Disclosure } from "@/app/_ui/disclosure";

/** The two shapes of a readings file, as `lib/files/readings-csv` reads them. */
export function FormatHelp() {
  return (
    <Disclosure summary="How the file is laid out">
      <p>One line a reading, each with its own time:</p>
      <pre>{`time,channel,emf_uV,polarity
2026-03-02T09:30:00.4+01:00,101,10500.2,+
2026-03-02T09:30:00.8+01:00,102,36245.1,+`}</pre>
      <p>or one line a scan, with a column for each channel:</p>
      <pre>{`time_s,101 [uV],102 [uV]
0,10500.2,36245.1
10,10503.0,36248.4`}</pre>
      <ul>
        <li>time: ISO 8601 with its zone; or time_s: seconds. Each channel&apos;s times rise.</li>
        <li>emf in uV (µV), mV or V, as measured: the platform converts to temperature itself.</li>
        <li>
          polarity (may be left out): + forward, - with the leads reversed; the sign of the reading stays as
          seen.
        </li>
        <li>Comma, semicolon or tab between columns; decimal commas are read between semicolons.</li>
      </ul>
    </Disclosure>
  );
}

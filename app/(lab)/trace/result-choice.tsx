import Link from "next/link";
import { Quantity } from "@/app/_ui/quantity";
import type { TracePage } from "@/lib/views/trace-page";

const setWords = { "as-received": "as received", "after-anneal": "after annealing" } as const;

/** Of a lot, or of two sets: the sensor whose chain is drawn, and the others a key away. */
const PartChoice = ({ page: { number, on, parts } }: { readonly page: TracePage }) => (
  <nav className="tabs" aria-label="Sensor whose chain is drawn">
    <ul>
      {parts.map(({ place, tag, serial, kind, run, isChosen }) => (
        <li key={place}>
          <Link href={`/trace/${number}?of=${place}&on=${on}`} aria-current={isChosen ? "page" : undefined}>
            {tag}, {serial}
            {parts.some((other) => other.place !== place && other.tag === tag)
              ? `, ${setWords[kind]}, ${run}`
              : ""}
          </Link>
        </li>
      ))}
    </ul>
  </nav>
);

/** The certificate's results: the one whose chain is drawn, and the others a key away. */
export function ResultChoice({ page }: { readonly page: TracePage }) {
  const chosen = page.parts.find(({ isChosen }) => isChosen);
  const of = chosen ? `of=${chosen.place}&` : "";
  return (
    <>
      {page.parts.length > 0 ? <PartChoice page={page} /> : null}
      <nav className="tabs" aria-label="Result whose chain is drawn">
        <ul>
          {page.results.map((result) => (
            <li key={result.celsius}>
              <Link
                href={`/trace/${page.number}?${of}at=${result.celsius}&on=${page.on}`}
                aria-current={result.isChosen ? "page" : undefined}
              >
                {result.setpoint}{" "}
                <Quantity value={result.errorCelsius} uncertainty={result.expandedCelsius} unit="°C" />
              </Link>
            </li>
          ))}
        </ul>
      </nav>
    </>
  );
}

import Link from "next/link";
import { Quantity } from "@/app/_ui/quantity";
import type { TracePage } from "@/lib/views/trace-page";

/** The certificate's results: the one whose chain is drawn, and the others a key away. */
export function ResultChoice({ page }: { readonly page: TracePage }) {
  return (
    <nav className="tabs" aria-label="Result whose chain is drawn">
      <ul>
        {page.results.map((result) => (
          <li key={result.celsius}>
            <Link
              href={`/trace/${page.number}?at=${result.celsius}&on=${page.on}`}
              aria-current={result.isChosen ? "page" : undefined}
            >
              {result.setpoint}{" "}
              <Quantity value={result.errorCelsius} uncertainty={result.expandedCelsius} unit="°C" />
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

import Link from "next/link";

/** The mark: two wires that meet in a hot bead, which is what this whole house is about. */
export function Wordmark({ href }: { readonly href: string }) {
  return (
    <Link className="rail-home" href={href}>
      <svg viewBox="0 0 24 24" width={22} height={22} aria-hidden="true" focusable="false">
        <path
          d="M2 4.5C9 4.5 11 9 16.5 11M2 19.5c7 0 9-4.5 14.5-6.5"
          fill="none"
          stroke="currentColor"
          strokeWidth="2.2"
        />
        <circle cx="18" cy="12" r="4" fill="var(--heat)" />
      </svg>
      Emfolio
    </Link>
  );
}

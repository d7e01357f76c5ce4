import type { ReactNode } from "react";
import { BareShell } from "@/app/_ui/bare-shell";

export default function PublicLayout({ children }: { readonly children: ReactNode }) {
  return <BareShell>{children}</BareShell>;
}

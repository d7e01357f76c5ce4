import type { ReactNode } from "react";
import { LabShell } from "@/app/_ui/lab-shell";
import { requireStaff } from "@/lib/web/auth";

export default async function LabLayout({ children }: { readonly children: ReactNode }) {
  const actor = await requireStaff();
  return (
    <LabShell name={actor.name} roles={actor.roles} atBench={actor.session === "bench"}>
      {children}
    </LabShell>
  );
}

import { parentOf, processCommand, processIdentity } from "@/lib/commands/process-identity";

export type StopRequest = {
  readonly asked: () => boolean;
  /** Resolves when the person asks. */
  readonly when: Promise<void>;
  /** The work, unless the person asks to stop before it is done: then it rejects and the work is left alone. */
  readonly unless: <T>(work: Promise<T>) => Promise<T>;
};

/** Ctrl-C, a polite kill, a closed terminal, or the end of the npm that started us. */
export function watchForStop(): StopRequest {
  let asked = false;
  const when = new Promise<void>((resolve) => {
    const ask = () => {
      asked = true;
      resolve();
    };
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, ask);
    if (process.env.npm_lifecycle_event !== undefined) onOrphaned(ask);
  });
  return {
    asked: () => asked,
    when,
    unless: (work) => Promise.race([work, when.then(() => Promise.reject(new Error("Stopped")))]),
  };
}

/** A killed npm cannot pass on that it was killed; without this its children would go on, unseen. */
function onOrphaned(act: () => void): void {
  const parent = process.ppid;
  // npm runs a script through a shell, which some shells replace by the command and some stay beside.
  const isShell = /^\S*sh -c /.test(processCommand(parent));
  const npm = isShell ? (parentOf(parent) ?? parent) : parent;
  const identity = processIdentity(npm);
  const timer = setInterval(() => {
    if (process.ppid === parent && processIdentity(npm) === identity) return;
    clearInterval(timer);
    act();
  }, 500);
  timer.unref();
}

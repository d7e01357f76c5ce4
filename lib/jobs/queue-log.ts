import { type LogFunctionFactory, Logger } from "graphile-worker";

type Meta = { readonly failure?: boolean; readonly job?: { readonly task_identifier?: string } };

/** The queue's own log, down to what somebody has to know: a failed delivery is told by its own row, not here. */
export const queueLog = (log: (line: string) => void): Logger => {
  const write: LogFunctionFactory = () => (level, message, meta) => {
    const { failure, job } = (meta ?? {}) as Meta;
    if (failure === true && job?.task_identifier === "send-mail") return;
    if (level === "error" || level === "warning") log(message);
  };
  return new Logger(write);
};

/** Thrown where the driver ended a long job before its end. */
export class Interrupted extends Error {}

/**
 * Runs a job that can be ended by ctrl-c: `stop.asked` then turns true.
 *
 * @param end what ends a job that waits and does not look
 */
export async function interruptible<T>(
  job: (stop: { readonly asked: boolean }) => Promise<T>,
  end: () => void = () => {},
): Promise<T> {
  const stop = { asked: false };
  const onInterrupt = (): void => {
    stop.asked = true;
    end();
  };
  process.once('SIGINT', onInterrupt);
  try {
    return await job(stop);
  } finally {
    process.off('SIGINT', onInterrupt);
  }
}

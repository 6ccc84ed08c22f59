/** Waiting with an end: a test that hangs must say what it was waiting for. */

/** Far above what an answer takes on a busy machine; only a server that never answers meets it. */
const patienceMs = 10_000;

/**
 * The promise's value; rejects with the message after the time is up, or at once where the server
 * has exited without an answer.
 */
export async function within<T>(promise: Promise<T>, message: () => string, exited?: Promise<unknown>, ms = patienceMs): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const ends: Promise<T>[] = [
    promise,
    new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new Error(`${message()} (waited ${ms / 1000} s)`)), ms);
    }),
  ];
  if (exited) {
    promise.catch(() => undefined); // the connection rejects it too when it is disposed of
    // An answer written just before the exit may still be in the pipe.
    const gone = exited.then(() => new Promise((resolve) => setTimeout(resolve, 50)));
    ends.push(gone.then(() => Promise.reject(new Error(`${message()} (the server has exited)`))));
  }
  try {
    return await Promise.race(ends);
  } finally {
    clearTimeout(timer);
  }
}

/** Asks again after every event until there is an answer. */
export function until<T>(
  ask: () => T | undefined,
  subscribe: (listener: () => void) => () => void,
  message: () => string,
  ms = patienceMs,
): Promise<T> {
  let stop: (() => void) | undefined;
  const found = new Promise<T>((resolve) => {
    const look = () => {
      const answer = ask();
      if (answer !== undefined) resolve(answer);
    };
    stop = subscribe(look);
    look();
  });
  return within(found, message, undefined, ms).finally(() => stop?.());
}

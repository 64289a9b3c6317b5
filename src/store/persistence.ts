/** Asks the browser not to throw this origin's storage away by itself. Keeping shows what it answered. */

const KEY = 'greenweight-asked-to-keep';

/** Null where it cannot be asked. */
export async function requestPersistence(): Promise<boolean | null> {
  return (await navigator.storage?.persist?.()) ?? null;
}

/** Once, when there is something worth keeping: a question at the first start would be answered with no. Never fails. */
export async function askOnceToKeep(): Promise<void> {
  try {
    if (localStorage.getItem(KEY) !== null) return;
    localStorage.setItem(KEY, 'asked');
    await requestPersistence();
  } catch {
    // Where nothing can be noted or asked, Keeping still has the button.
  }
}

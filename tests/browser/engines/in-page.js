// Runs inside the page of any engine: what the maker's thumb does, by the names that the app gives its parts.
// A plain script, since it is handed over as text.
async ({ act, name, text = '', tries = 150 }) => {
  const like = new RegExp(`^(?:${name})$`, 'i');
  const said = (element) =>
    (element.getAttribute('aria-label') ?? element.textContent).trim().replace(/\s+/g, ' ');
  const shown = (element) => element.getClientRects().length > 0;
  const top = () => [...document.querySelectorAll('dialog[open]')].at(-1) ?? document;
  const named = (selector) =>
    [...top().querySelectorAll(selector)].find((each) => shown(each) && like.test(said(each)));
  const acts = {
    press: () => {
      const found = named('button:not([disabled]), a[href]');
      found?.click();
      return found !== undefined;
    },
    choose: () => {
      const found = [...top().querySelectorAll('label')].find(
        (each) => each.control?.type === 'radio' && like.test(said(each)),
      );
      found?.click();
      return found !== undefined;
    },
    fill: () => {
      const label = [...top().querySelectorAll('label')].find((each) => like.test(said(each)));
      const control = label?.control;
      if (!control) return false;
      // The browser's own setter, past the one that React puts over it.
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(control, text);
      control.dispatchEvent(new Event('input', { bubbles: true }));
      return true;
    },
    see: () => new RegExp(name).test(document.body.textContent),
    titled: () => like.test(document.querySelector('h1')?.textContent?.trim() ?? ''),
    shut: () => document.querySelector('dialog[open]') === null,
  };
  for (let tried = 0; tried < tries; tried++) {
    if (acts[act]()) return 'done';
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return `cannot ${act} "${name}" on: ${document.body.textContent.slice(0, 600)}`;
};

/** Brings the first field with a problem into view, once it is drawn: the button that was pressed stands far below it. */
export function toFirstProblem(): void {
  requestAnimationFrame(() => {
    document.querySelector('main [role="alert"]:not([hidden])')?.scrollIntoView({ block: 'center' });
  });
}

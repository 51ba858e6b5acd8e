/**
 * Keeps the foot of the page above a phone's keyboard where the browser lays the keyboard over the page instead of
 * making the page smaller. Zooming in changes the same measure and is left alone.
 */
export function stayAboveKeyboard(): void {
  const seen = window.visualViewport;
  if (seen === null) return;
  seen.addEventListener('resize', () => {
    const isCovered = seen.scale === 1 && seen.height < window.innerHeight - 1;
    document.body.style.height = isCovered ? `${seen.height}px` : '';
    if (isCovered) window.scrollTo(0, 0);
  });
}

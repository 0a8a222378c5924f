// Announcements: two regions that are there from the start. Each text becomes a new element, so that the
// same words twice are read twice; old ones go, so that nobody reads them later.

const KEEP_MS = 10_000;

export function makeAnnouncer(polite, urgent, later = setTimeout) {
  return (text, isUrgent) => {
    const line = document.createElement('p');
    line.textContent = text;
    (isUrgent ? urgent : polite).append(line);
    later(() => line.remove(), KEEP_MS);
  };
}

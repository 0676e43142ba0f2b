/** How a stress is taken where nobody says with which factor it is meant. */
export const FACTOR = 'With Wahl’s factor, the greatest';

/** Plain shapes drawn for the demo, so that they look the same wherever they are made into pictures. */
export const TIDEWILLOW_LOGO = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 300" width="600" height="300">
<rect width="600" height="300" rx="36" fill="#e7f4f2"/>
<path d="M40 190c65-60 130-60 195 0s130 60 195 0 100-50 130-20v90H40z" fill="#0b6e6e"/>
<path d="M300 40c-60 30-95 75-100 130M300 40c-20 45-25 85-20 125M300 40c30 40 50 80 55 125M300 40c60 25 95 65 105 120" fill="none" stroke="#2f8f63" stroke-width="16" stroke-linecap="round"/>
</svg>`;

export const HICKORANE_LOGO = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 300" width="600" height="300">
<rect width="600" height="300" fill="#fbf1e6"/>
<path d="M60 250V140L170 60l110 80v110z" fill="#9c2f1f"/>
<rect x="140" y="165" width="60" height="85" fill="#fbf1e6"/>
<circle cx="430" cy="150" r="92" fill="none" stroke="#9c2f1f" stroke-width="20"/>
<path d="M430 78v144M358 150h144M379 99l102 102M481 99L379 201" stroke="#5b3a1d" stroke-width="14" stroke-linecap="round"/>
</svg>`;

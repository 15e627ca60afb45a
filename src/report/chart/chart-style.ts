/** Looks of a chart: black and greys, told apart by dashes and shapes, so that any printer will do. */
export const CHART_STYLE = `
svg.chart path { fill: none; stroke: #1a1a1a; }
svg.chart .grid { stroke: #e2e2e2; }
svg.chart .axis { stroke: #555; }
svg.chart .band { fill: #d9d9d9; fill-opacity: .75; stroke: #8a8a8a; stroke-width: .7; }
svg.chart .column { fill: #c4c4c4; stroke: #555; stroke-width: .7; }
svg.chart .curve { stroke-width: 1.8; }
svg.chart .dashed { stroke-dasharray: 7 4; }
svg.chart .dotted { stroke-dasharray: 2 3; }
svg.chart .rule { stroke-dasharray: 10 3 2 3; }
svg.chart .whisker { stroke-width: 1; }
svg.chart .mark { fill: #1a1a1a; stroke-width: 1.2; }
svg.chart .ring { fill: #fff; }
svg.chart .cross { fill: none; stroke-width: 2; }
`;

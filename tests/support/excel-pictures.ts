// tests: charts and shapes of a sheet in the host behind office.js: what is set on them is taken and let go.

import { HostObject } from "./excel-model.ts";

const ignored = () => {};
const taking = (type: string, names: readonly string[], more = {}) =>
  new HostObject(type, { setters: Object.fromEntries(names.map((name) => [name, ignored])), ...more });

const series = () =>
  taking("ChartSeries", ["Name", "HasDataLabels"], {
    methods: { SetValues: ignored, SetXAxisValues: ignored },
    children: {
      Format: () =>
        new HostObject("ChartSeriesFormat", {
          children: {
            Fill: () => new HostObject("ChartFill", { methods: { SetSolidColor: ignored } }),
            Line: () => taking("ChartLineFormat", ["Color"]),
          },
        }),
      DataLabels: () => taking("ChartDataLabels", ["NumberFormat"]),
    },
  });

const chart = () =>
  new HostObject("Chart", {
    methods: { SetPosition: ignored },
    children: {
      Title: () =>
        taking("ChartTitle", ["Text"], {
          children: {
            Format: () =>
              new HostObject("ChartTitleFormat", { children: { Font: () => taking("ChartFont", ["Size"]) } }),
          },
        }),
      Legend: () => taking("ChartLegend", ["Position"]),
      Series: () => new HostObject("ChartSeriesCollection", { methods: { GetItemAt: series, Add: series } }),
      Axes: () =>
        new HostObject("ChartAxes", {
          children: {
            CategoryAxis: () => taking("ChartAxis", ["ReversePlotOrder"]),
            ValueAxis: () => taking("ChartAxis", ["Minimum"]),
          },
        }),
    },
  });

export const charts = () => new HostObject("ChartCollection", { methods: { Add: chart } });

export const shapes = () =>
  new HostObject("ShapeCollection", {
    methods: {
      AddImage: () =>
        taking("Shape", ["LockAspectRatio", "Left", "Top", "Height", "AltTextTitle", "AltTextDescription"]),
    },
  });

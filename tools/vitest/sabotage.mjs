// A plugin that changes one number of one data file as it is loaded: WASHLINE_SABOTAGE='{"file":"data/…","path":["a",0],"by":1.1}'.
const order = process.env.WASHLINE_SABOTAGE ? JSON.parse(process.env.WASHLINE_SABOTAGE) : null;

export function sabotage() {
  return {
    name: 'sabotage', enforce: 'pre',
    transform(code, id) {
      if (!order || order.idle || !id.split('?')[0].endsWith(order.file)) return null;
      const data = JSON.parse(code);
      const holder = order.path.slice(0, -1).reduce((at, key) => at[key], data);
      const last = order.path.at(-1);
      holder[last] = holder[last] === 0 ? order.by - 1 : holder[last] * order.by;
      return { code: JSON.stringify(data), map: null };
    },
  };
}

// ?debug: outlines every mirror element and lists who asked for frames. Draws no frame itself.

export function showDebug({ loop, mirror }) {
  document.documentElement.dataset.debug = '';
  const list = document.createElement('pre');
  list.id = 'debug';
  list.ariaHidden = 'true';
  document.body.append(list);
  const draw = loop.draw;
  loop.draw = () => {
    draw();
    const causes = [...loop.causes].map(([cause, times]) => `${times} ${cause}`).join('\n');
    list.textContent = `${loop.frames} frames, ${mirror.size} nodes\n${causes}`;
  };
}

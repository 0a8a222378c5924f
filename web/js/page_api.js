// window.rehale for tests and kiosks. Described in the project's DEVELOPERS.md.

export function openPageApi({ bridge, loop, mirror, later, painter }) {
  const api = window.rehale;

  // {rects: true} adds every node with its box as drawn; {causes: true} who asked for frames how often.
  api.probe = ({ rects = false, causes = false } = {}) => ({
    screen: mirror.frame.screen,
    frames: loop.frames,
    pending: loop.pending !== 0,
    heapBytes: bridge.heapBytes,
    later: later.state,
    laterWaits: later.waits,
    mirrorNodes: mirror.size,
    buildId: api.buildId,
    contentId: bridge.text('content_id'),
    webgl: painter()?.version ?? 0,
    problem: api.problem,
    errors: [...api.errors],
    ...(rects && { rects: mirror.frame.nodes.map(({ id, role, name = '', rect, clip }) => ({ id, role, name, rect, clip })) }),
    ...(causes && { causes: Object.fromEntries(loop.causes) }),
  });

  // The event log of the run as JSON text; '' when there is none.
  api.exportRun = () => bridge.text('export_run');
}

// Runs before everything else and without it: the error panel, and a watch over the start. Plain old
// script, so that it also answers in browsers that cannot read modules. Must not need any other file.
(function () {
  'use strict';
  var SLOW_AFTER_MS = 15000;  // a slow phone on a slow line is done in 5 s
  var own = document.currentScript && document.currentScript.src;
  // base: the folder of this version's files (ci/lib/named_set.mjs).
  var rehale = (window.rehale = {
    buildId: '', base: own ? own.replace(/[^/]*$/, '') : document.baseURI, started: false, problem: '', errors: []
  });
  var meta = document.querySelector('meta[name="build"]');
  if (meta) rehale.buildId = meta.content;

  function byId(id) { return document.getElementById(id); }

  // The first problem stays: what follows from it says less. technical: for the person who mends it.
  rehale.showProblem = function (title, detail, technical) {
    if (rehale.problem) return;
    rehale.problem = title;
    whenRead(function () { fill(title, detail, technical); });
  };

  // The page may not be read to its end yet.
  function whenRead(go) {
    if (byId('rem')) go();
    else document.addEventListener('DOMContentLoaded', go);
  }

  function fill(title, detail, technical) {
    byId('problem-title').textContent = title;
    byId('problem-detail').textContent = detail;
    byId('problem-technical').textContent = technical || '';
    byId('problem-more').hidden = !technical;
    byId('problem').hidden = false;
    byId('stage').hidden = true;
    if (byId('skeleton')) byId('skeleton').hidden = true;
    document.title = title;
    byId('problem-title').focus();
    if (location.hash === '#kiosk') mendItself();
  }

  // On a shared device nobody presses "load again". Three times in ten minutes: it says where else help is, and waits.
  function mendItself() {
    var health = {}, now = Date.now();
    try {
      health = JSON.parse(sessionStorage.getItem('rehale.health') || '{}');
      health.failed = (health.failed || 0) + 1;
      health.recent = (health.recent || []).filter(function (at) { return at <= now && now - at < 600000; });
      health.recent.push(now);
      sessionStorage.setItem('rehale.health', JSON.stringify(health));
    } catch (error) { note(error); }
    var often = !health.recent || health.recent.length >= 3;
    setTimeout(function () { location.reload(); }, often ? 600000 : 3000);
    if (often && rehale.plain) rehale.plain();
  }

  function note(text) {
    rehale.errors.push(String(text).slice(0, 500));
    if (rehale.errors.length > 20) rehale.errors.shift();
  }

  // An error of our own scripts leaves the page half working: better to say so.
  // Browser extensions' errors, and ResizeObserver's harmless one (no error object), are only noted.
  window.addEventListener('error', function (event) {
    var element = event.target && event.target.tagName ? event.target : null;
    note(element ? 'did not load: ' + (element.src || element.href) : event.message);
    if (element) {
      if (element.tagName !== 'SCRIPT' && element.rel !== 'stylesheet') return;
      rehale.showProblem('A part of this page did not arrive.',
        'Check that you are online. Then load the page again.', element.src || element.href);
    } else if (event.error && String(event.filename).indexOf(location.origin) === 0) {
      if (rehale.stop) rehale.stop();
      rehale.showProblem(rehale.started ? 'This page has stopped.' : 'This page cannot start here.',
        rehale.started ? 'Please load it again. You may have to start over.'
          : 'Please update your browser, or use another one.', event.message);
    }
  }, true);
  window.addEventListener('unhandledrejection', function (event) {
    note((event.reason && event.reason.message) || event.reason);
  });

  if (location.hash === '#kiosk') document.documentElement.className = 'kiosk';  // not yet the devices: its own start

  // A device picked while the app is still on its way: its files come along, and the app begins with it. The buttons
  // stand until the app's first screen does: to the last moment a tap counts.
  function pick(button) {
    if (rehale.picked) return;
    rehale.picked = button.getAttribute('data-family');
    button.setAttribute('aria-pressed', 'true');
    whenRead(function () { byId('picked').hidden = false; });
    if (rehale.onPick) rehale.onPick();
    if (location.protocol === 'file:') return;  // one file: nothing is to come
    ['procedure.json', 'questions.json', 'text.en.json'].forEach(function (name) {
      var link = document.createElement('link');
      link.rel = 'preload';
      link.as = 'fetch';
      link.crossOrigin = 'anonymous';
      link.href = rehale.base + 'content/families/' + rehale.picked + '/' + name;
      document.head.appendChild(link);
    });
  }
  document.addEventListener('click', function (event) {
    var button = event.target.closest && event.target.closest('#early button');
    if (button) pick(button);
  });

  document.addEventListener('DOMContentLoaded', function () {
    var asked = /[?&]family=([\w-]+)/.exec(location.search);
    var named = asked && document.querySelector('#early [data-family="' + asked[1] + '"]');
    if (named) pick(named);
    byId('problem-reload').addEventListener('click', function () { location.reload(); });
    if (!('noModule' in document.createElement('script')) || typeof WebAssembly !== 'object') {
      rehale.showProblem('Your browser cannot run this page.',
        'Please update your browser, or use another one.', 'no WebAssembly or no script modules');
    }
  });
  setTimeout(function () {
    if (!rehale.started && byId('slow')) byId('slow').hidden = false;
  }, SLOW_AFTER_MS);
})();

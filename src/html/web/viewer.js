// The fixture to look at: turned, cut open, taken apart, part by part.
//
// Frame of the assembly's file: metres, X along the tube towards the cap, Y up. Drawn only when something
// changes. Faces that a cut lays bare are the backs of faces beyond it, painted flat and hatched: right as
// long as no two parts share metal, which a rule of the design says.
'use strict';

(async () => {
  const canvas = document.getElementById('view');
  if (!canvas) {
    return;
  }
  const byId = (id) => document.getElementById(id);
  let data = {parts: {}, passes: []};
  let renderer;
  try {
    renderer = new THREE.WebGLRenderer({canvas, antialias: true, alpha: true, preserveDrawingBuffer: true});
  } catch {
    canvas.hidden = true;
    return;
  }
  byId('no-view').hidden = true;
  byId('no-view').style.display = 'none';

  // ---- scene

  const scene = new THREE.Scene();
  const camera = new THREE.PerspectiveCamera(30, 1, 0.001, 20);
  const headlight = new THREE.DirectionalLight(0xffffff, 0.75);
  scene.add(new THREE.HemisphereLight(0xffffff, 0x8a8478, 0.55), camera);
  camera.add(headlight, headlight.target);
  headlight.position.set(-0.4, 0.7, 1);
  headlight.target.position.set(0, 0, -1);
  const fixed = new THREE.Group(), turning = new THREE.Group(), gas = new THREE.Group();
  scene.add(fixed, turning, gas);
  gas.visible = false;

  let asked = false;
  function draw() {
    if (!asked) {
      asked = true;
      requestAnimationFrame(() => {
        asked = false;
        renderer.render(scene, camera);
        canvas.dataset.drawn = String(Number(canvas.dataset.drawn ?? 0) + 1);
      });
    }
  }

  function bodies(bytes) {
    return new Promise((done, failed) => new THREE.GLTFLoader().parse(bytes, '', (file) => {
      const meshes = [];
      file.scene.updateMatrixWorld(true);
      file.scene.traverse((object) => object.isMesh && meshes.push(object));
      done(meshes);
    }, failed));
  }

  // ---- parts

  const hatch = (shader) => {
    shader.fragmentShader = shader.fragmentShader.replace('#include <color_fragment>', `#include <color_fragment>
      if (mod(gl_FragCoord.x + gl_FragCoord.y, 9.0) < 1.6) diffuseColor.rgb *= 0.72;`);
  };

  const pieces = []; // {name, node, home, way, turns, solid}
  const edgeInk = new THREE.LineBasicMaterial({color: 0x11181b, transparent: true, opacity: 0.55});

  function addPiece(mesh) {
    const name = mesh.name || mesh.parent.name;
    const part = data.parts[name] ?? {title: name, way: [0, 0, 0], turns: false, made: false};
    const colour = mesh.material.color.clone().convertLinearToSRGB();
    const solid = new THREE.Mesh(mesh.geometry, new THREE.MeshPhongMaterial({
      color: colour, specular: 0x333333, shininess: 25, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1}));
    const inside = new THREE.MeshBasicMaterial({color: colour.clone().lerp(new THREE.Color(0xfff4dc), 0.45), side: THREE.BackSide});
    inside.onBeforeCompile = hatch;
    const node = new THREE.Group();
    mesh.matrixWorld.decompose(node.position, node.quaternion, node.scale);
    node.add(solid, new THREE.Mesh(mesh.geometry, inside),
             new THREE.LineSegments(new THREE.EdgesGeometry(mesh.geometry, 25), edgeInk));
    (part.turns ? turning : fixed).add(node);
    const [x, y, z] = part.way;
    pieces.push({name, part, node, home: node.position.clone(), way: new THREE.Vector3(x, z, -y), solid});
  }

  function addGas(mesh) {
    const body = new THREE.Mesh(mesh.geometry, new THREE.MeshLambertMaterial({
      color: mesh.material.color.clone().convertLinearToSRGB(), transparent: true, opacity: 0.5, depthWrite: false, side: THREE.DoubleSide}));
    mesh.matrixWorld.decompose(body.position, body.quaternion, body.scale);
    gas.add(body);
  }

  let box = new THREE.Box3();
  let step = 0; // between parts taken apart

  // All that has been drawn goes, what the page holds now takes its place; false while it holds nothing.
  let loads = 0;
  async function load() {
    const turn = ++loads;
    if (byId('assembly').textContent === '') {
      return false;
    }
    const [solids, spaces] = await Promise.all(
      ['assembly', 'gas-spaces'].map(async (id) => bodies(await unpacked(byId(id)))));
    if (turn !== loads) {
      return false; // a later one is on its way
    }
    data = JSON.parse(byId('viewer-data').textContent);
    pieces.length = 0;
    for (const group of [fixed, turning, gas]) {
      group.traverse((object) => object.geometry?.dispose());
      group.remove(...group.children);
    }
    solids.forEach(addPiece);
    spaces.forEach(addGas);
    box = new THREE.Box3().setFromObject(scene);
    step = 0.13 * box.getSize(new THREE.Vector3()).length();
    return true;
  }

  // ---- camera

  const controls = new THREE.OrbitControls(camera, canvas);
  controls.enableKeys = false;
  controls.enableZoom = false; // until the view has the focus: the wheel scrolls the page
  controls.addEventListener('change', draw);
  canvas.addEventListener('focus', () => { controls.enableZoom = true; });
  canvas.addEventListener('blur', () => { controls.enableZoom = false; });
  canvas.addEventListener('mousedown', () => canvas.focus());

  const oblique = new THREE.Vector3(1, 0.75, 1.35);

  const lookOn = () => look(camera.position.clone().sub(controls.target)); // from where one looks already

  // All that is shown, seen from a direction and as near as the stage allows.
  function look(from) {
    scene.updateMatrixWorld(true);
    const shown = new THREE.Box3();
    pieces.filter((piece) => piece.node.visible).forEach((piece) => shown.expandByObject(piece.solid));
    if (byId('cut-along-on').checked) {
      shown.max.z = Math.min(shown.max.z, Number(byId('cut-along').value));
    }
    if (byId('cut-across-on').checked) {
      shown.max.x = Math.min(shown.max.x, Number(byId('cut-across').value));
    }
    if (shown.isEmpty()) {
      return;
    }
    controls.target.copy(shown.getCenter(new THREE.Vector3()));
    camera.position.copy(from).add(controls.target);
    camera.lookAt(controls.target);
    camera.updateMatrixWorld(true);
    const right = new THREE.Vector3(), up = new THREE.Vector3(), back = new THREE.Vector3();
    camera.matrixWorld.extractBasis(right, up, back);
    const slope = Math.tan(THREE.Math.degToRad(0.5 * camera.fov)), margin = 1.06;
    let distance = 0;
    for (let corner = 0; corner < 8; ++corner) {
      const at = new THREE.Vector3(...['x', 'y', 'z'].map((axis, bit) => (corner >> bit & 1 ? shown.max : shown.min)[axis]));
      at.sub(controls.target);
      const beside = Math.max(Math.abs(at.dot(right)) / camera.aspect, Math.abs(at.dot(up)));
      distance = Math.max(distance, at.dot(back) + margin * beside / slope);
    }
    camera.position.copy(back).multiplyScalar(distance).add(controls.target);
    controls.update();
    draw();
  }

  function fit() {
    const {clientWidth: width, clientHeight: height} = canvas.parentElement;
    if (width > 0 && height > 0) {
      renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
      renderer.setSize(width, height, false);
      camera.aspect = width / height;
      camera.updateProjectionMatrix();
      draw();
    }
  }
  new ResizeObserver(fit).observe(canvas.parentElement);
  fit();

  for (const button of document.querySelectorAll('[data-look]')) {
    button.addEventListener('click', () => look(new THREE.Vector3(...button.dataset.look.split(' ').map(Number))));
  }

  function orbit(across, up, nearer) {
    const from = camera.position.clone().sub(controls.target);
    const round = new THREE.Spherical().setFromVector3(from);
    round.theta += across;
    round.phi = Math.min(Math.max(round.phi + up, 0.01), Math.PI - 0.01);
    round.radius *= nearer;
    camera.position.setFromSpherical(round).add(controls.target);
    controls.update();
    draw();
  }
  const keys = {
    ArrowLeft: () => orbit(-0.12, 0, 1), ArrowRight: () => orbit(0.12, 0, 1),
    ArrowUp: () => orbit(0, -0.12, 1), ArrowDown: () => orbit(0, 0.12, 1),
    '+': () => orbit(0, 0, 1 / 1.15), '-': () => orbit(0, 0, 1.15), 0: () => look(oblique)};
  canvas.addEventListener('keydown', (event) => {
    if (keys[event.key] && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      keys[event.key]();
    }
  });

  // ---- cuts: what lies beyond them towards the viewer of the first view is taken away

  const millimetres = (metres) => `${(1000 * metres).toFixed(0)} mm`;
  const cuts = [
    {name: 'cut-along', plane: new THREE.Plane(new THREE.Vector3(0, 0, -1)), axis: 'z'},
    {name: 'cut-across', plane: new THREE.Plane(new THREE.Vector3(-1, 0, 0)), axis: 'x'}];

  function cut() {
    renderer.clippingPlanes = cuts.filter((one) => byId(`${one.name}-on`).checked).map((one) => one.plane);
    for (const {name, plane} of cuts) {
      byId(name).disabled = !byId(`${name}-on`).checked;
      plane.constant = Number(byId(name).value);
      byId(`${name}-at`).textContent = byId(name).disabled ? '' : millimetres(plane.constant);
    }
    draw();
  }
  function setCuts(value) {
    for (const {name, axis} of cuts) {
      Object.assign(byId(name), {min: box.min[axis], max: box.max[axis], value: value ?? byId(name).value});
    }
  }
  for (const {name} of cuts) {
    byId(name).addEventListener('input', cut);
    byId(`${name}-on`).addEventListener('change', () => {
      cut();
      lookOn();
    });
  }
  byId('gas-on').addEventListener('change', (event) => {
    gas.visible = event.target.checked;
    draw();
  });

  // ---- taking apart and indexing

  function move() {
    const share = Number(byId('apart').value) / 100;
    for (const {node, home, way} of pieces) {
      node.position.copy(home).addScaledVector(way, share * step);
    }
    byId('apart-at').textContent = `${Math.round(100 * share)} %`;
    const angle = Number(byId('collar').value);
    turning.rotation.x = -THREE.Math.degToRad(angle); // collar angles count counterclockwise seen from the cap
    turning.updateMatrixWorld(true);
    byId('collar-at').textContent = `${angle % 360}\u00b0`;
    gas.visible = byId('gas-on').checked && share === 0;
    draw();
  }
  byId('apart').addEventListener('input', move);
  byId('apart').addEventListener('change', lookOn);
  byId('collar').addEventListener('input', () => {
    byId('pass').selectedIndex = 0;
    move();
  });
  function listPasses() {
    const options = data.passes.map(({name, start}) => new Option(`${name}, begins`, String(((start % 360) + 360) % 360)));
    byId('pass').replaceChildren(new Option('choose', ''), ...options);
  }
  byId('pass').addEventListener('change', (event) => {
    if (event.target.value !== '') {
      byId('collar').value = event.target.value;
      move();
    }
  });

  // ---- parts shown and hidden, and named

  const words = ({title, size, material, pieces: count, for: purpose}) =>
    [title, material, size, count > 1 ? `${count} pieces` : '', purpose].filter(Boolean).join(' · ');
  let lit = '';
  function point(name) {
    if (name !== lit) {
      lit = name;
      pieces.forEach((piece) => piece.solid.material.emissive.setHex(piece.name === name ? 0x3a2a52 : 0));
      byId('pointed').textContent = name === '' ? '' : words(data.parts[name] ?? {title: name});
      draw();
    }
  }

  const boxes = new Map();
  function show(names) {
    for (const [name, checkbox] of boxes) {
      checkbox.checked = names(name);
    }
    pieces.forEach((piece) => { piece.node.visible = boxes.get(piece.name).checked; });
    draw();
  }
  function listPart(name, shown) {
    const row = document.createElement('li'), label = document.createElement('label');
    const checkbox = Object.assign(document.createElement('input'), {type: 'checkbox', checked: shown});
    const {title, size, made} = data.parts[name] ?? {title: name};
    label.append(checkbox, ` ${title}${made || !size ? '' : ` ${size}`}`);
    row.append(label);
    byId('shown').append(row);
    boxes.set(name, checkbox);
    checkbox.addEventListener('change', () => show((other) => boxes.get(other).checked));
    row.addEventListener('mouseenter', () => point(name));
    row.addEventListener('mouseleave', () => point(''));
    checkbox.addEventListener('focus', () => point(name));
  }
  function listParts() {
    const hidden = new Set([...boxes].filter(([, checkbox]) => !checkbox.checked).map(([name]) => name));
    byId('shown').replaceChildren();
    boxes.clear();
    new Set(pieces.map((piece) => piece.name)).forEach((name) => listPart(name, !hidden.has(name)));
    show((name) => boxes.get(name).checked);
  }
  byId('show-all').addEventListener('click', () => show(() => true));
  const workpiece = ['tube', 'cap'];
  byId('show-made').addEventListener('click', () => show((name) => data.parts[name]?.made || workpiece.includes(name)));

  const ray = new THREE.Raycaster();
  function partAt(event) {
    const {left, top, width, height} = canvas.getBoundingClientRect();
    ray.setFromCamera({x: 2 * (event.clientX - left) / width - 1, y: 1 - 2 * (event.clientY - top) / height}, camera);
    const there = pieces.filter((piece) => piece.node.visible).map((piece) => piece.solid);
    const kept = (hit) => renderer.clippingPlanes.every((plane) => plane.distanceToPoint(hit.point) >= 0);
    const hit = ray.intersectObjects(there).find(kept);
    return hit ? pieces.find((piece) => piece.solid === hit.object).name : '';
  }
  let waiting = false;
  canvas.addEventListener('mousemove', (event) => {
    if (!waiting && event.buttons === 0) {
      waiting = true;
      requestAnimationFrame(() => {
        waiting = false;
        point(partAt(event));
      });
    }
  });
  canvas.addEventListener('click', (event) => point(partAt(event)));
  canvas.addEventListener('mouseleave', () => point(''));

  // ---- what the page holds, now and when it is renewed; cuts, places and the way one looks stay

  async function renew() {
    const first = pieces.length === 0;
    if (await load()) {
      lit = '';
      byId('view-controls').hidden = false;
      setCuts(first ? 0 : undefined);
      listPasses();
      listParts();
      cut();
      move();
      if (first) {
        look(oblique);
      }
    }
  }
  document.addEventListener('fixture-renewed', renew);
  await renew();
})();

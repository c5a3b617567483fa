"""A headless Chromium spoken to over its DevTools pipe: no driver, no packages beside Python and Chromium."""

import base64
import json
import os
import shutil
import subprocess
import sys
import tempfile

SKIPPED = 77  # what ctest reads as "skipped"


def find_chromium():
    for name in ("chromium", "chromium-browser"):
        path = shutil.which(name)
        if path:
            return path
    print("no chromium here: skipped")
    sys.exit(SKIPPED)


class Browser:
    """One page of one browser. Everything the page complains of or asks for is kept."""

    def __init__(self):
        self.profile = tempfile.TemporaryDirectory(prefix="rillwatt-browser-", ignore_cleanup_errors=True)
        to_browser, self.write_end = os.pipe()
        self.read_end, from_browser = os.pipe()
        shell = 'exec "$@" 3<&%d 4>&%d' % (to_browser, from_browser)
        self.process = subprocess.Popen(
            ["sh", "-c", shell, "sh", find_chromium(), "--headless", "--no-sandbox", "--disable-gpu",
             "--disable-dev-shm-usage", "--no-first-run", "--remote-debugging-pipe",
             "--user-data-dir=" + self.profile.name],
            pass_fds=(to_browser, from_browser), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(to_browser)
        os.close(from_browser)
        self.buffer = b""
        self.number = 0
        self.session = None
        self.complaints = []
        self.requests = []
        self.loaded = False
        target = self.send("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.send("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.send(domain + ".enable")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.kill()
        self.process.wait()
        self.profile.cleanup()

    def send(self, method, **params):
        self.number += 1
        message = {"id": self.number, "method": method, "params": params}
        if self.session:
            message["sessionId"] = self.session
        os.write(self.write_end, json.dumps(message).encode() + b"\0")
        while True:
            answer = self.receive()
            if answer.get("id") == self.number:
                if "error" in answer:
                    raise RuntimeError(method + ": " + json.dumps(answer["error"]))
                return answer["result"]

    def receive(self):
        while b"\0" not in self.buffer:
            piece = os.read(self.read_end, 1 << 20)
            if not piece:
                raise RuntimeError("the browser is gone")
            self.buffer += piece
        raw, self.buffer = self.buffer.split(b"\0", 1)
        message = json.loads(raw)
        self.note(message.get("method"), message.get("params", {}))
        return message

    def note(self, method, params):
        if method == "Page.loadEventFired":
            self.loaded = True
        elif method == "Network.requestWillBeSent":
            self.requests.append(params["request"]["url"])
        elif method in ("Runtime.consoleAPICalled", "Runtime.exceptionThrown", "Log.entryAdded",
                        "Page.javascriptDialogOpening"):
            self.complaints.append(method + ": " + json.dumps(params)[:400])

    def open(self, path, width=1200, height=900, media="screen", dark=False):
        self.complaints, self.requests, self.loaded = [], [], False
        self.resize(width, height)
        self.send("Emulation.setEmulatedMedia", media=media,
                  features=[{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}])
        self.send("Page.navigate", url="file://" + os.path.abspath(path))
        while not self.loaded:
            self.receive()

    def resize(self, width, height):
        self.send("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1,
                  mobile=width < 600)

    def run(self, expression):
        result = self.send("Runtime.evaluate", expression=expression, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in result:
            raise RuntimeError(json.dumps(result["exceptionDetails"])[:600])
        return result["result"].get("value")

    def click(self, x, y):
        for kind in ("mousePressed", "mouseReleased"):
            self.send("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left", clickCount=1)

    def move(self, x, y):
        self.send("Input.dispatchMouseEvent", type="mouseMoved", x=x, y=y)

    def press(self, key, code):
        for kind in ("keyDown", "keyUp"):
            self.send("Input.dispatchKeyEvent", type=kind, key=key, code=key, windowsVirtualKeyCode=code)

    def screenshot(self, path, full=True):
        data = self.send("Page.captureScreenshot", captureBeyondViewport=full)["data"]
        with open(path, "wb") as out:
            out.write(base64.b64decode(data))

    def pdf(self, path, width_inches, height_inches):
        data = self.send("Page.printToPDF", paperWidth=width_inches, paperHeight=height_inches,
                         preferCSSPageSize=False, printBackground=True)["data"]
        with open(path, "wb") as out:
            out.write(base64.b64decode(data))

"""Every worked example, asked through a client that a public generator made from the OpenAPI document.

The generator is openapi-python-client from PyPI. What goes through its models must come back as it went in, and what the server
answers must come back as it came: a field the document forgets, or a word it types wrongly, would be lost on the way.

Usage: client.py BENCHLEAF OPENAPI.JSON
"""

import importlib
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import urllib.request

UNITS = ("imperial", "metric")


def generated(document: pathlib.Path, folder: pathlib.Path) -> None:
    tool = pathlib.Path(sys.executable).with_name("openapi-python-client")
    command = [tool, "generate", "--path", document, "--meta", "none", "--output-path", folder / "bench_client"]
    made = subprocess.run(command, capture_output=True, text=True, check=False)
    # Formatters that are not there are a warning; an address that could not be understood is one too, and counts.
    ill = [line for line in made.stdout.splitlines() if re.search(r"ERROR|Unable|cannot|WARNING parsing", line)]
    if made.returncode or ill:
        sys.exit(f"the generator does not understand the document:\n{made.stdout}{made.stderr}")
    sys.path.insert(0, str(folder))


def served(benchleaf: str) -> tuple[subprocess.Popen, str]:
    server = subprocess.Popen([benchleaf, "serve", "--port", "0"], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    for line in server.stdout:
        if found := re.search(r"http://\S+", line):
            return server, found[0].rstrip("/")
    sys.exit("the server did not say where it is")


def asked(address: str, text: str, units: str) -> dict:
    request = urllib.request.Request(f"{address}?units={units}", text.encode(), {"Content-Type": "application/json"})
    with urllib.request.urlopen(request) as reply:
        return json.load(reply)


def models(module) -> tuple[type, type]:
    """The models of what is asked and of what is answered."""
    types = [value for name, value in vars(module).items() if isinstance(value, type)]
    body = next(one for one in types if one.__name__.endswith("Body"))
    answer = next(one for one in types if one.__name__.endswith("Response200"))
    return body, answer


def main(benchleaf: str, document: str) -> None:
    described = json.loads(pathlib.Path(document).read_text())
    faults, tried = [], 0
    with tempfile.TemporaryDirectory() as folder:
        generated(pathlib.Path(document).resolve(), pathlib.Path(folder))
        server, home = served(benchleaf)
        try:
            for path, methods in described["paths"].items():
                if "post" not in methods or not path.startswith("/api/calculators/"):
                    continue
                name = methods["post"]["operationId"]
                module = importlib.import_module(f"bench_client.api.default.{name.replace('-', '_')}")
                body, answer = models(module)
                examples = methods["post"]["requestBody"]["content"]["application/json"]["examples"]
                for units in UNITS:
                    tried += 1
                    example = examples[units]["value"]
                    sent = body.from_dict(example).to_dict()
                    if sent != example:
                        faults.append(f"{name}, {units}: the example comes back as {sent}, not as {example}")
                    came = asked(home + path, json.dumps(sent), units)
                    told = answer.from_dict(came).to_dict()
                    if told != came:
                        faults.append(f"{name}, {units}: the answer loses {difference(came, told)}")
        finally:
            server.terminate()
    if tried < 100:
        sys.exit(f"only {tried} examples were found")
    if faults:
        sys.exit("\n".join(faults) + f"\n{len(faults)} faults in {tried} round trips")
    print(f"{tried} worked examples went through the generated client and came back")


def difference(one, other, at: str = "") -> str:
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        return next(difference(one[key], other[key], f"{at}/{key}") for key in one if one[key] != other[key])
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return next(difference(a, b, f"{at}/{n}") for n, (a, b) in enumerate(zip(one, other)) if a != b)
    return f"{one} at {at}, told as {other}"


if __name__ == "__main__":
    main(*sys.argv[1:])

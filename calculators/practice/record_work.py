"""What pages ask about records: each function takes plain data and returns plain data.

`skills` and `items` come from the page and are as the build made them; `text`, `imported` and
`files` may be anything.
"""

from calculators.practice import crew as crews
from calculators.practice import remembering
from calculators.practice.record import RecordProblem, checked, merged, new_record, read_record
from calculators.practice.sign_off import signed_off


def record(asked):
    """Answer about one record: {"text", "skills", "today"} and perhaps "imported".

    text: the record that the browser keeps, "" for none. imported: the text of a file to take in.

    Returns `problem` (a sentence, "" when all is well), `record` (what the browser should keep now:
    None with a problem), `new` (how much the file brought) and `skills` (see `signed_off`).
    """
    try:
        found, new = _kept(asked["text"]), 0
    except RecordProblem as problem:
        return {**_NOTHING, "problem": f"The record in this browser: {problem}"}
    try:
        if "imported" in asked:
            imported = read_record(asked["imported"])
            _refuse_a_stranger(found, imported)
            found, new = merged(found, imported)
    except RecordProblem as problem:
        return {**_NOTHING, "problem": str(problem)}
    skills = signed_off(found, asked["skills"], asked["today"])
    return {"problem": "", "record": found, "new": new, "skills": skills}


def observe(asked):
    """Add what an observer saw: {"text", "observation", "skills", "today"}; answers as `record`."""
    try:
        found = _kept(asked["text"])
        seen = checked({**new_record(), "observed": [asked["observation"]]})["observed"][0]
    except RecordProblem as problem:
        said = str(problem).replace(" of observation 1", "")
        said = said.replace("Observation 1", "What was seen")
        return {**_NOTHING, "problem": said}
    if seen["observer"].casefold() == found["name"].casefold():
        said = "Nobody signs off their own work. Write the name of the person who watched."
        return {**_NOTHING, "problem": said}
    if seen["day"] > asked["today"]:
        return {**_NOTHING, "problem": "The day lies in the future. Write the day it was seen."}
    added, new = merged(found, {**new_record(), "observed": [seen]})
    if not new:
        return {**_NOTHING, "problem": "The record holds this observation already."}
    skills = signed_off(added, asked["skills"], asked["today"])
    return {"problem": "", "record": added, "new": new, "skills": skills}


def remember(asked):
    """Answer what to do on a day: {"text", "items", "today", "seed"}; see `next_items`."""
    try:
        found = _kept(asked["text"])
    except RecordProblem as problem:
        return {"problem": f"The record in this browser: {problem}"}
    return {
        "problem": "",
        **remembering.next_items(found, asked["items"], asked["today"], asked["seed"]),
    }


def crew(asked):
    """Answer about several files: {"files", "skills", "today"}, each file {"name", "text"}.

    Returns what `crew` returns, and `problems`: a `file` and a sentence for each that was left out.
    """
    records, problems = [], []
    for file in asked["files"]:
        try:
            records.append(read_record(file["text"]))
        except RecordProblem as problem:
            problems.append({"file": file["name"], "sentence": str(problem)})
    return {**crews.crew(records, asked["skills"], asked["today"]), "problems": problems}


_NOTHING = {"record": None, "new": 0, "skills": []}


def _refuse_a_stranger(found, imported):
    """Raise RecordProblem where nobody can tell whether two records are one person's."""
    if imported["name"] and not found["name"] and (found["attempts"] or found["observed"]):
        raise RecordProblem(
            f"The file is the record of “{imported['name']}”, and the one here has no name yet. "
            "Nothing was changed. If both are yours, write your name here and load the file again."
        )


def _kept(text):
    return read_record(text) if text else new_record()

"""All symptoms that a diagnosis can start from."""

from __future__ import annotations

from entremetry.checks.symptom import Symptom
from entremetry.checks.symptoms_of_build import BUILD_SYMPTOMS
from entremetry.checks.symptoms_of_firmness import FIRMNESS_SYMPTOMS
from entremetry.checks.symptoms_of_glaze import GLAZE_SYMPTOMS
from entremetry.checks.symptoms_of_texture import TEXTURE_SYMPTOMS

SYMPTOMS: tuple[Symptom, ...] = (
    *FIRMNESS_SYMPTOMS,
    *TEXTURE_SYMPTOMS,
    *BUILD_SYMPTOMS,
    *GLAZE_SYMPTOMS,
)

"""The slides of a lecture, opened with a general reader of presentations."""

import io
import pathlib

import pptx
import pytest
import torquill
from pptx.enum.shapes import MSO_SHAPE_TYPE


@pytest.fixture(scope="module")
def lecture(tmp_path_factory: pytest.TempPathFactory) -> pathlib.Path:
    folder = tmp_path_factory.mktemp("lecture")
    torquill.lecture(output=str(folder), size="960x540")
    return folder


def test_slides_have_picture_title_notes_and_alternative_text(lecture: pathlib.Path) -> None:
    slides = pptx.Presentation(lecture / "lecture.pptx")
    names = sorted(path.stem for path in lecture.glob("*.svg"))
    # Behind the figures stands the list of sources, slides of words.
    assert len(slides.slides) > len(names) >= 20
    for slide in list(slides.slides)[len(names) :]:
        assert slide.shapes.title.text.startswith("Sources")
    for slide, name in zip(slides.slides, names):
        caption = (lecture / f"{name}.caption.txt").read_text()
        assert caption.startswith(slide.shapes.title.text.rstrip("."))
        (picture,) = [shape for shape in slide.shapes if shape.shape_type == MSO_SHAPE_TYPE.PICTURE]
        assert picture.image.content_type == "image/png"
        assert picture.image.size == (1920, 930)
        described = picture._element.nvPicPr.cNvPr.get("descr")
        assert described == (lecture / f"{name}.alt.txt").read_text().strip()
        notes = slide.notes_slide.notes_text_frame.text
        assert notes == (lecture / f"{name}.notes.txt").read_text().strip()
        # The picture stands below the title and ends with the slide.
        assert picture.top + picture.height == slides.slide_height
        assert slide.shapes.title.top + slide.shapes.title.height <= picture.top


def test_the_reader_can_write_what_it_read(lecture: pathlib.Path) -> None:
    kept = io.BytesIO()
    pptx.Presentation(lecture / "lecture.pptx").save(kept)
    again = pptx.Presentation(io.BytesIO(kept.getvalue()))
    assert again.core_properties.title == "Strength curves"

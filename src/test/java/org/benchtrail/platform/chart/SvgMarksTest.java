package org.benchtrail.platform.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.benchtrail.platform.chart.SvgMarks.Mark;
import org.benchtrail.platform.chart.SvgMarks.Shape;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;

class SvgMarksTest {
    private static Document drawn(Mark... marks) {
        return Jsoup.parse(SvgMarks.draw(List.of(marks), "Said \"aloud\"", null).getValue(), "", Parser.xmlParser());
    }

    @Test
    void places_areSharesOfThePicture() {
        Document svg = drawn(
                new Mark("m1", Shape.ARROW, 0, 250, 505, 1000, ""), new Mark("m2", Shape.CIRCLE, 900, 0, 100, 500, ""));
        assertEquals("0.0%", svg.selectFirst(".ink line").attr("x1"));
        assertEquals("25.0%", svg.selectFirst(".ink line").attr("y1"));
        assertEquals("50.5%", svg.selectFirst(".ink line").attr("x2"));
        assertEquals("50.0%", svg.selectFirst(".ink ellipse").attr("cx"));
        assertEquals("40.0%", svg.selectFirst(".ink ellipse").attr("rx"));
        assertEquals("25.0%", svg.selectFirst(".ink ellipse").attr("ry"));
        assertEquals("url(#ink-m1)", svg.selectFirst(".ink line").attr("marker-end"));
        assertEquals(
                2, svg.select("marker").stream().map(tip -> tip.id()).distinct().count());
    }

    @Test
    void hostileText_staysText() {
        String hostile = "</text><script>alert(1)</script>\"' onload=\"x";
        Document svg = drawn(new Mark("m", Shape.WORDS, 700, 10, 700, 10, hostile));
        assertEquals(0, svg.select("script").size());
        assertEquals(List.of(hostile, hostile), svg.select("text").eachText());
        assertEquals("end", svg.selectFirst(".ink text").attr("text-anchor"));
        assertEquals("Said \"aloud\"", svg.selectFirst("svg").attr("aria-label"));
    }
}

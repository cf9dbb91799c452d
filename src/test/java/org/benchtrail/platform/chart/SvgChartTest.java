package org.benchtrail.platform.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class SvgChartTest {
    private static Chart chart(String title, String up, Point... points) {
        return new Chart("time in s", up, List.of(new Series(title, Kind.LINE, List.of(points))));
    }

    private static Document parsed(Chart chart) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(SvgChart.draw(chart).getValue())));
    }

    private static List<Element> elements(Document document, String name) {
        NodeList found = document.getElementsByTagName(name);
        return Stream.iterate(0, i -> i < found.getLength(), i -> i + 1)
                .map(i -> (Element) found.item(i))
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "0, 100, 5, 0, 100, 20",
        "0, 97, 5, 0, 100, 20",
        "-12.1, -11.2, 4, -12.5, -11, 0.5",
        "3, 3, 4, 1, 5, 1",
        "0, 0, 4, -1, 1, 0.5",
        "0, 4e9, 4, 0, 4e9, 1e9",
        "0, 3e-13, 4, 0, 3e-13, 1e-13"
    })
    void axis_coversTheValuesInRoundSteps(double least, double most, int steps, double low, double high, double step) {
        Axis axis = Axis.over(least, most, steps);
        assertEquals(step, axis.step(), 1e-9 * step);
        assertEquals(low, axis.low(), 1e-9 * step);
        assertEquals(high, axis.high(), 1e-9 * step);
        assertEquals(low, axis.ticks().get(0), 1e-9 * step);
        assertEquals(high, axis.ticks().get(axis.ticks().size() - 1), 1e-9 * step);
    }

    /** Numbers at risk: one below each tick that is lettered, in its column, each row under its title. */
    @Test
    void rowsBelowTheAxis_standUnderItsTicks_aboveTheKey() throws Exception {
        Chart bare = new Chart(
                "time in h", "share", List.of(new Series("a", Kind.STAIR, List.of(Point.at(0, 1), Point.at(20, 0)))));
        Chart chart = new Chart(
                bare.across(),
                bare.up(),
                bare.series(),
                List.of(
                        new Chart.Row("Left of <a>", at -> "n" + Math.round(at)),
                        new Chart.Row("Left of b", at -> "m" + Math.round(at))));
        List<Element> texts = elements(parsed(chart), "text");
        for (String tick : List.of("0", "5", "10", "15", "20")) {
            String column = texts.stream()
                    .filter(t -> t.getTextContent().equals(tick)
                            && (tick.equals("20")
                                    || !t.getAttribute("text-anchor").equals("end")))
                    .map(t -> t.getAttribute("x"))
                    .findFirst()
                    .orElseThrow();
            for (String row : List.of("n", "m")) {
                assertEquals(
                        column,
                        texts.stream()
                                .filter(t -> t.getTextContent().equals(row + tick))
                                .map(t -> t.getAttribute("x"))
                                .findFirst()
                                .orElseThrow());
            }
        }
        List<String> down = texts.stream()
                .filter(t ->
                        List.of("Left of <a>", "n0", "Left of b", "m0", "a").contains(t.getTextContent()))
                .map(Element::getTextContent)
                .toList();
        assertEquals(List.of("Left of <a>", "n0", "Left of b", "m0", "a"), down);
        assertTrue(height(chart) > height(bare) + 60);
    }

    private static double height(Chart chart) throws Exception {
        return Double.parseDouble(parsed(chart).getDocumentElement().getAttribute("height"));
    }

    @Test
    void linesAndPoints_standWhereTheTicksSay() throws Exception {
        Document svg = parsed(chart("Rise", "°C", Point.at(0, 0), Point.at(50, 50), Point.at(100, 100)));
        String[] points = elements(svg, "path").stream()
                .filter(p -> p.getAttribute("class").equals("line line0"))
                .findFirst()
                .orElseThrow()
                .getAttribute("d")
                .substring(1)
                .split("L");
        double[] x = Stream.of(points)
                .mapToDouble(p -> Double.parseDouble(p.split(" ")[0]))
                .toArray();
        double[] y = Stream.of(points)
                .mapToDouble(p -> Double.parseDouble(p.split(" ")[1]))
                .toArray();
        assertEquals((x[0] + x[2]) / 2, x[1], 0.11);
        assertEquals((y[0] + y[2]) / 2, y[1], 0.11);
        assertTrue(y[0] > y[2], "up is more");
    }

    @Test
    void texts_cannotBecomeMarkup() throws Exception {
        Chart hostile = chart("</svg><script>alert('1')</script>", "\"><b>&", Point.at(0, 1), Point.at(1, 2));
        String svg = SvgChart.draw(hostile).getValue();
        assertFalse(svg.contains("<script") || svg.contains("<b>"), svg);
        String words = String.join(
                "",
                elements(parsed(hostile), "text").stream()
                        .map(Element::getTextContent)
                        .toList());
        assertTrue(words.contains("</svg><script>alert('1')</script>"), words);
    }

    @Test
    void dots_standInTheirIntervals() throws Exception {
        Series dots = new Series("Right", Kind.DOTS, List.of(new Point(50, 40, 20, 60)));
        Series ideal = new Series("Ideal", Kind.IDEAL, List.of(Point.at(0, 0), Point.at(100, 100)));
        Document svg = parsed(new Chart("stated", "right", List.of(ideal, dots)));
        Element band = elements(svg, "path").stream()
                .filter(p -> p.getAttribute("class").equals("band"))
                .findFirst()
                .orElseThrow();
        String[] parts = band.getAttribute("d").substring(1).split("[ V]");
        Element dot = elements(svg, "circle").get(0);
        assertEquals(parts[0], dot.getAttribute("cx"));
        double down = Double.parseDouble(dot.getAttribute("cy"));
        assertEquals((Double.parseDouble(parts[1]) + Double.parseDouble(parts[2])) / 2, down, 0.11);
        assertTrue(Double.parseDouble(parts[1]) > Double.parseDouble(parts[2]), "low is further down");
    }
}

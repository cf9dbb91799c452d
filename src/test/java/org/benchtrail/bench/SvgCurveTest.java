package org.benchtrail.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class SvgCurveTest {
    private static Curve curve(String title, String yUnit, Point... points) {
        return new Curve(title, "time", "s", "temperature", yUnit, List.of(points));
    }

    private static Document parsed(List<Curve> curves) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(SvgCurve.draw(curves).getValue())));
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

    static Stream<Calculation<?>> calculations() {
        return Bench.all().stream();
    }

    private static <I extends Record> List<Curve> curves(Calculation<I> calculation) {
        return calculation.calculate(calculation.example()).curves();
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void everyChart_isWellFormedAndStaysInItsFrame(Calculation<?> calculation) throws Exception {
        for (List<Curve> chart : SvgCurve.charts(curves(calculation))) {
            Document svg = parsed(chart);
            String[] box = svg.getDocumentElement().getAttribute("viewBox").split(" ");
            List<Element> lines = elements(svg, "path").stream()
                    .filter(p -> p.getAttribute("class").startsWith("line "))
                    .toList();
            assertEquals(2 * chart.size(), lines.size(), "each curve has its line and its key");
            for (Element line : lines) {
                for (String point : line.getAttribute("d").substring(1).split("L")) {
                    double[] at = Stream.of(point.split("[ h]"))
                            .mapToDouble(Double::parseDouble)
                            .toArray();
                    assertTrue(at[0] >= 0 && at[0] <= Double.parseDouble(box[2]), point);
                    assertTrue(at[1] >= 0 && at[1] <= Double.parseDouble(box[3]), point);
                }
            }
            String words = String.join(
                    " | ",
                    elements(svg, "text").stream().map(Element::getTextContent).toList());
            chart.forEach(c -> assertTrue(words.contains(c.title()), words));
            assertTrue(
                    words.contains(SvgCurve.axisLabel(
                            chart.get(0).yLabel(), chart.get(0).yUnit())),
                    words);
        }
    }

    @Test
    void linesAndPoints_standWhereTheTicksSay() throws Exception {
        Document svg = parsed(List.of(curve("Rise", "°C", new Point(0, 0), new Point(50, 50), new Point(100, 100))));
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
    void curvesWithTheSameAxes_shareAChartAndLimitsAreDashed() {
        Curve rise = curve("Rise", "°C", new Point(0, 20), new Point(10, 60));
        Curve limit = curve("Trip point", "°C", new Point(0, 90), new Point(10, 90));
        Curve other = curve("Rise", "K", new Point(0, 1), new Point(10, 2));
        assertEquals(List.of(List.of(rise, limit), List.of(other)), SvgCurve.charts(List.of(rise, other, limit)));
        assertTrue(SvgCurve.draw(List.of(rise, limit)).getValue().contains("class=\"line limit\""));
    }

    @Test
    void texts_cannotBecomeMarkup() throws Exception {
        Curve hostile = curve("</svg><script>alert('1')</script>", "\"><b>&", new Point(0, 1), new Point(1, 2));
        String svg = SvgCurve.draw(List.of(hostile)).getValue();
        assertFalse(svg.contains("<script") || svg.contains("<b>"), svg);
        String words = String.join(
                "",
                elements(parsed(List.of(hostile)), "text").stream()
                        .map(Element::getTextContent)
                        .toList());
        assertTrue(words.contains("</svg><script>alert('1')</script>"), words);
    }
}

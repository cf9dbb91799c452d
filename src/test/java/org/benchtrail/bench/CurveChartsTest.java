package org.benchtrail.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.platform.chart.SvgChart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class CurveChartsTest {
    private static Curve curve(String title, String yUnit, Point... points) {
        return new Curve(title, "time", "s", "temperature", yUnit, List.of(points));
    }

    private static Document parsed(List<Curve> curves) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(
                        SvgChart.draw(CurveCharts.chart(curves)).getValue())));
    }

    private static List<Element> elements(Document document, String name) {
        NodeList found = document.getElementsByTagName(name);
        return Stream.iterate(0, i -> i < found.getLength(), i -> i + 1)
                .map(i -> (Element) found.item(i))
                .toList();
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
        for (List<Curve> chart : CurveCharts.grouped(curves(calculation))) {
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
                    words.contains(CurveCharts.axisLabel(
                            chart.get(0).yLabel(), chart.get(0).yUnit())),
                    words);
        }
    }

    @Test
    void curvesWithTheSameAxes_shareAChartAndLimitsAreDashed() {
        Curve rise = curve("Rise", "°C", new Point(0, 20), new Point(10, 60));
        Curve limit = curve("Trip point", "°C", new Point(0, 90), new Point(10, 90));
        Curve other = curve("Rise", "K", new Point(0, 1), new Point(10, 2));
        assertEquals(List.of(List.of(rise, limit), List.of(other)), CurveCharts.grouped(List.of(rise, other, limit)));
        assertTrue(SvgChart.draw(CurveCharts.chart(List.of(rise, limit)))
                .getValue()
                .contains("class=\"line limit\""));
    }
}
